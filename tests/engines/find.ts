import type { Place } from "./engine.ts";

export type Role =
  | "alert"
  | "button"
  | "checkbox"
  | "combobox"
  | "heading"
  | "img"
  | "link"
  | "listitem"
  | "main"
  | "navigation"
  | "radio"
  | "region"
  | "row"
  | "slider"
  | "status"
  | "table"
  | "textbox";

/** A part of the page as a screen reader names it. `name`: all of it, or what it must match; "" is any. */
export interface Part {
  readonly role: Role;
  readonly name: string | RegExp;
  readonly within?: Part;
}

/** What the page shows of a part. */
export interface Seen {
  readonly text: string;
  /** A field's text, a slider's said value; else "". */
  readonly value: string;
  readonly isInvalid: boolean;
  /** Folded: it says it expands and has not. */
  readonly isFolded: boolean;
  /** Its explanation, as aria-describedby names it. */
  readonly described: string;
  readonly middle: Place;
  /** What lies over its middle, if anything does. */
  readonly cover: string | null;
}

/** A part as the page can be asked for it: from the outermost, each a role and a pattern of its name. */
export type Path = readonly (readonly [Role, string])[];

export function pathOf({ role, name, within }: Part): Path {
  const escaped = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|]/g, "\\$&");
  const pattern = name instanceof RegExp ? name.source : name === "" ? "" : `^${escaped(name)}$`;
  return [...(within === undefined ? [] : pathOf(within)), [role, pattern]];
}

/**
 * Runs in the page: every part of this path that is to be seen; with `scroll`, the first is brought
 * to the window's middle. Roles and names by the parts of HTML-AAM and accname that the page uses.
 */
export function look(path: Path, scroll: boolean): Seen[] {
  const selectors: Record<Role, string> = {
    alert: "[role=alert]",
    button: "button, summary, [role=button]",
    checkbox: "input[type=checkbox]",
    combobox: "select",
    heading: "h1, h2, h3, h4",
    img: "[role=img]",
    link: "a[href]",
    listitem: "li",
    main: "main",
    navigation: "nav",
    radio: "input[type=radio]",
    region: "section",
    row: "tr",
    slider: "[role=slider], input[type=range]",
    status: "[role=status], output",
    table: "table",
    textbox: "input:not([type]), input[type=text], input[type=search], textarea",
  };
  const said = (text: string | null | undefined): string =>
    (text ?? "").replace(/\s+/g, " ").trim();
  const byIds = (element: Element, attribute: string): string =>
    said(
      (element.getAttribute(attribute) ?? "")
        .split(/\s+/)
        .map((id) => document.getElementById(id)?.textContent ?? "")
        .join(" "),
    );
  const labelOf = (element: Element): string => {
    const labels = "labels" in element ? (element.labels as NodeListOf<Element> | null) : null;
    return said(
      [...(labels?.[0]?.childNodes ?? [])]
        .filter((node) => !node.contains(element))
        .map((node) => node.textContent)
        .join(" "),
    );
  };
  const nameOf = (element: Element): string =>
    byIds(element, "aria-labelledby") ||
    said(element.getAttribute("aria-label")) ||
    labelOf(element) ||
    said(element.querySelector("caption, legend")?.textContent) ||
    said(element.textContent);
  const seen = (element: Element): Seen => {
    const { left, top, width, height } = element.getBoundingClientRect();
    const middle = { x: left + width / 2, y: top + height / 2 };
    const hit = document.elementFromPoint(middle.x, middle.y);
    const label = hit?.closest("label");
    const isOpen =
      hit !== null && (element.contains(hit) || (label ?? null) === element.closest("label"));
    return {
      text: said(element.textContent),
      value:
        "value" in element
          ? String(element.value)
          : (element.getAttribute("aria-valuetext") ?? element.getAttribute("aria-valuenow") ?? ""),
      isInvalid: element.getAttribute("aria-invalid") === "true",
      isFolded: element.getAttribute("aria-expanded") === "false",
      described: byIds(element, "aria-describedby"),
      middle,
      cover: isOpen ? null : (hit?.outerHTML.slice(0, 120) ?? "the window’s edge"),
    };
  };
  let found: Element[] = [document.documentElement];
  for (const [role, pattern] of path) {
    found = found
      .flatMap((outer) => [...outer.querySelectorAll(selectors[role])])
      .filter((one) => one.checkVisibility() && new RegExp(pattern).test(nameOf(one)));
  }
  if (scroll) found[0]?.scrollIntoView({ block: "center", inline: "center", behavior: "instant" });
  return found.map(seen);
}
