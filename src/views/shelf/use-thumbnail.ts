import { type RefObject, useEffect, useRef, useState } from "react";
import type { Scene } from "../../drawing/scene.ts";
import { thumbnailOf } from "../../drawing/thumbnail.ts";
import { settingOf } from "../../profile/setting.ts";
import { shownPlan } from "../../store/plan.ts";
import type { Shelf } from "../../store/shelf.ts";
import type { Card } from "../../store/shelf-entry.ts";

/** The entry's section, small; read once its place in the page comes near the window. */
export function useThumbnail(
  shelf: Shelf,
  { id, revision, savedAt }: Card,
): [RefObject<HTMLDivElement | null>, Scene | null] {
  const place = useRef<HTMLDivElement>(null);
  const [near, setNear] = useState(false);
  const [scene, setScene] = useState<Scene | null>(null);
  useEffect(() => {
    if (place.current === null) return;
    const watch = new IntersectionObserver(
      (seen) => setNear(seen.some(({ isIntersecting }) => isIntersecting)),
      { rootMargin: "200px" },
    );
    watch.observe(place.current);
    return () => watch.disconnect();
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a later save is another drawing.
  useEffect(() => {
    if (!near) return;
    let wanted = true;
    void shelf
      .look(id)
      .then((work) => {
        const plan = work === undefined ? null : shownPlan(work);
        const set = plan === null ? null : settingOf(plan.instrument);
        if (wanted && plan !== null && set?.ok) setScene(thumbnailOf(set.setting, plan.profile));
      })
      // Without a picture the row is as good.
      .catch(() => {});
    return () => {
      wanted = false;
    };
  }, [shelf, id, revision, savedAt, near]);
  return [place, scene];
}
