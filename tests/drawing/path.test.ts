import { describe, expect, test } from "vitest";
import { type Frame, pxAt, pyAt } from "../../src/drawing/frame.ts";
import { closedPathOf, curvePoints, pathOf } from "../../src/drawing/path.ts";

const frame: Frame = { along: 1.3, up: 6.5, left: 44, level: 140, turned: false };

describe("pathOf", () => {
  test("writes hundredths and no more", () => {
    expect(
      pathOf([
        [1 / 3, 2],
        [-0.004, 10.126],
      ]),
    ).toBe("M0.33,2L0,10.13");
    expect(closedPathOf([[0, 0]])).toBe("M0,0Z");
    expect(pathOf([])).toBe("");
  });
});

describe("curvePoints", () => {
  const dome = (x: number): number => -((x - 400) ** 2) / 17_000;

  test("meets both ends and every corner between them", () => {
    const points = curvePoints(frame, 0, 400, dome, [150, 60, 500]);
    const xs = points.map(([x]) => x);
    for (const x of [0, 60, 150, 400]) expect(xs).toContain(pxAt(frame, x));
    expect(Math.max(...xs)).toBe(pxAt(frame, 400));
    expect([...xs].sort((a, b) => a - b)).toEqual(xs);
  });

  test("keeps within a twentieth of a px of the curve", () => {
    const points = curvePoints(frame, 0, 400, dome);
    let worst = 0;
    for (let x = 0; x <= 400; x += 0.5) {
      const px = pxAt(frame, x);
      const i = points.findIndex(([at]) => at >= px);
      const [[ax, ay], [bx, by]] = [points[i - 1] ?? points[i] ?? [0, 0], points[i] ?? [0, 0]];
      const y = bx === ax ? by : ay + ((by - ay) * (px - ax)) / (bx - ax);
      worst = Math.max(worst, Math.abs(y - pyAt(frame, dome(x))));
    }
    expect(worst).toBeLessThan(0.05);
    expect(points.length).toBeLessThan(60);
  });

  test("draws a straight line with two points", () => {
    expect(curvePoints(frame, 0, 400, (x) => x / 100)).toHaveLength(2);
  });
});
