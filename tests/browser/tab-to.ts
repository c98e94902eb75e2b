import type { Page } from "@playwright/test";

/** Presses `key` until what is named so has the focus; a radio button only where one is asked for. */
export async function tabTo(
  page: Page,
  name: string,
  { radio = false, key = "Tab" } = {},
): Promise<void> {
  for (let press = 0; press < 150; press++) {
    await page.keyboard.press(key);
    const focus = await page.evaluate(() => {
      const element = document.activeElement;
      const input = element instanceof HTMLInputElement ? element : null;
      const label = input?.labels?.[0]?.textContent;
      const said = element?.getAttribute("aria-label") ?? label ?? element?.textContent;
      return { said: said?.trim(), radio: input?.type === "radio" };
    });
    if (focus.said === name && focus.radio === radio) return;
  }
  throw new Error(`${key} never reaches “${name}”.`);
}
