import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { gzipSync } from "node:zlib";

/**
 * Bytes of script and of style, gzipped, that a first visit loads: what the built page names, and
 * every script those import before they run. Scripts loaded later, when a view is opened, are not in.
 */
export async function firstLoad(dist: string): Promise<{ script: number; style: number }> {
  const page = await readFile(join(dist, "index.html"), "utf8");
  const styles = new Set(matches(page, /href="\.\/([^"]+\.css)"/g));
  const scripts = new Set(matches(page, /(?:src|href)="\.\/([^"]+\.js)"/g));
  for (const script of scripts) {
    const source = await readFile(join(dist, script), "utf8");
    for (const near of matches(source, /(?:import|from)\s*"\.\/([^"]+\.js)"/g)) {
      scripts.add(join(script, "..", near));
    }
  }
  return { script: await gzipped(dist, scripts), style: await gzipped(dist, styles) };
}

const matches = (text: string, pattern: RegExp): string[] =>
  [...text.matchAll(pattern)].flatMap((found) => found[1] ?? []);

async function gzipped(dist: string, names: Iterable<string>): Promise<number> {
  let bytes = 0;
  for (const name of names) bytes += gzipSync(await readFile(join(dist, name))).length;
  return bytes;
}
