/** Papers the sheet prints on: A4 is 210 × 297 mm (ISO 216), Letter 8.5 × 11 in. */
export const papers = ["A4", "Letter"] as const;

export type Paper = (typeof papers)[number];

const sizes: Readonly<Record<Paper, string>> = { A4: "210mm 297mm", Letter: "215.9mm 279.4mm" };

/**
 * Tells the printer which paper. The rule goes into a sheet of its own that the page adopts: a strict
 * content security policy lets that pass, and forbids a style element.
 */
export function printOn(paper: Paper): () => void {
  const rules = new CSSStyleSheet();
  rules.insertRule(`@page { size: ${sizes[paper]}; margin: 0; }`);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, rules];
  return () => {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== rules);
  };
}

const key = "rimwright-paper";

/** The paper chosen last; Letter where the browser's own region prints on it, else A4. */
export function lastPaper(): Paper {
  try {
    const kept = localStorage.getItem(key);
    const known = papers.find((paper) => paper === kept);
    if (known !== undefined) return known;
  } catch {
    // A browser that keeps nothing still prints.
  }
  return /-(US|CA|MX|PH|CL|CO)\b/.test(navigator.language) ? "Letter" : "A4";
}

export function savePaper(paper: Paper): void {
  try {
    localStorage.setItem(key, paper);
  } catch {
    // A browser that keeps nothing has the choice made again.
  }
}
