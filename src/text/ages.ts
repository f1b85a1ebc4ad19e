const relative = new Intl.RelativeTimeFormat('en-GB', { numeric: 'auto' });
const DAY_MS = 86_400_000;

const midnight = (ms: number): number => new Date(ms).setHours(0, 0, 0, 0);

/** `today`, `yesterday`, `12 days ago`, `5 weeks ago`, `4 months ago`: by the calendar of this phone. */
export function howLongAgo(ms: number, nowMs: number): string {
  const days = Math.round((midnight(ms) - midnight(nowMs)) / DAY_MS);
  if (days > -21) return relative.format(days, 'day');
  if (days > -84) return relative.format(Math.round(days / 7), 'week');
  return days > -700
    ? relative.format(Math.round(days / 30.4), 'month')
    : relative.format(Math.round(days / 365), 'year');
}

/** How far something lies ahead, roughly: `20 minutes`, `5 hours`, `12 days`. */
export function roughSpan(ms: number): string {
  const [count, unit] =
    ms < 7_200_000 ? [ms / 60_000, 'minute'] : ms < 2 * DAY_MS ? [ms / 3_600_000, 'hour'] : [ms / DAY_MS, 'day'];
  const whole = Math.max(1, Math.round(count as number));
  return `${whole.toLocaleString('en-GB')} ${unit}${whole === 1 ? '' : 's'}`;
}
