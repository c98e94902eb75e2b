/** First and last day that a builder's work may be dated. */
export const [firstDay, lastDay] = ["1900-01-01", "2200-12-31"] as const;

/**
 * Whether a text is a whole day of the calendar, such as `2026-05-14`, that work may be dated. A date field
 * half typed gives days of the year 20, and one typed on too far those of the year 20266.
 */
export function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text) || text < firstDay || text > lastDay) return false;
  const [year = 0, month = 0, day = 0] = text.split("-").map(Number);
  return new Date(Date.UTC(year, month - 1, day)).toISOString().startsWith(text);
}

/** What is told of a date field that holds no such day. */
export const dayWanted = `Write a whole day, from ${firstDay.slice(0, 4)} to ${lastDay.slice(0, 4)}. The last whole one is kept.`;
