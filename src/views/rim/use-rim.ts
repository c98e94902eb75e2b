import { useMemo } from "react";
import type { Profile } from "../../profile/outcome.ts";
import { profileOf } from "../../profile/profile.ts";
import { type Setting, settingOf } from "../../profile/setting.ts";
import { type Side, sideOf } from "../../profile/side.ts";
import { usePlan } from "../use-plan.ts";

export interface Rim {
  readonly setting: Setting;
  /** With stations at the spacing asked for. */
  readonly profile: Profile;
  readonly side: Side;
}

/** The rim that is drawn: of the present instrument, or of the last one that worked. */
export function useRim(spacing: number): Rim | null {
  const plan = usePlan();
  return useMemo(() => {
    if (plan === null) return null;
    const set = settingOf(plan.instrument);
    const result = profileOf(plan.instrument, { stationEvery: spacing });
    if (!set.ok || !result.ok) return null;
    const { setting } = set;
    return { setting, profile: result.profile, side: sideOf(setting, result.profile) };
  }, [plan, spacing]);
}
