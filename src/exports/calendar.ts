/** One entry of a calendar file. */
export interface CalendarEvent {
  /** The same for the same thing in every file, on every phone. */
  readonly uid: string;
  /** A whole day (`YYYY-MM-DD`) or a moment (UTC, RFC 3339). */
  readonly start: string;
  readonly summary: string;
  readonly description: string;
  /** Rises with every change of this entry. */
  readonly sequence: number;
  /** It is no longer to happen: calendars that have it take it out. */
  readonly cancelled: boolean;
}

export const CALENDAR_MIME = 'text/calendar';
const MOST_OCTETS = 75;
/** A whole day calls at nine in the morning, a moment when it comes. */
const ALARM = { day: 'PT9H', moment: 'PT0S' } as const;
const DAY_MS = 86_400_000;

/** Octets of a character in UTF-8; half a pair counts as the replacement it is written as. */
function octets(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x1_0000 ? 3 : 4;
}

/**
 * A line cut into pieces of at most 75 octets, never inside a character; each further piece begins with a space.
 * SOURCE: RFC 5545, 3.1.
 */
export function folded(line: string): string {
  let text = '';
  let room = MOST_OCTETS;
  for (const character of line) {
    const size = octets(character);
    if (size > room) {
      text += '\r\n ';
      room = MOST_OCTETS - 1;
    }
    text += character;
    room -= size;
  }
  return text;
}

/**
 * Text as a value: backslash, semicolon, comma and line breaks escaped; other control characters, which a value must not
 * hold, left out. SOURCE: RFC 5545, 3.3.11.
 */
export const escapedText = (text: string): string =>
  text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters the standard forbids
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g, '')
    .replace(/[\\;,]/g, (character) => `\\${character}`)
    .replace(/\r\n|\r|\n/g, '\\n');

/** `20261031T183000Z`. SOURCE: RFC 5545, 3.3.5, form 2. */
const utc = (ms: number): string => `${new Date(ms).toISOString().slice(0, 19).replace(/[-:]/g, '')}Z`;
/** `20261031`. SOURCE: RFC 5545, 3.3.4. */
const dateValue = (day: string): string => day.replaceAll('-', '');
const nextDay = (day: string): string => new Date(Date.parse(day) + DAY_MS).toISOString().slice(0, 10);

function linesOf(event: CalendarEvent, stamp: string): readonly string[] {
  const { uid, start, summary, description, sequence, cancelled } = event;
  const isDay = !start.includes('T');
  return [
    'BEGIN:VEVENT',
    `UID:${escapedText(uid)}`,
    `DTSTAMP:${stamp}`,
    ...(isDay
      ? [`DTSTART;VALUE=DATE:${dateValue(start)}`, `DTEND;VALUE=DATE:${dateValue(nextDay(start))}`]
      : [`DTSTART:${utc(Date.parse(start))}`, 'DURATION:PT15M']),
    `SUMMARY:${escapedText(summary)}`,
    `DESCRIPTION:${escapedText(description)}`,
    `SEQUENCE:${sequence}`,
    `STATUS:${cancelled ? 'CANCELLED' : 'CONFIRMED'}`,
    'TRANSP:TRANSPARENT',
    ...(cancelled
      ? []
      : [
          'BEGIN:VALARM',
          'ACTION:DISPLAY',
          `DESCRIPTION:${escapedText(summary)}`,
          `TRIGGER:${isDay ? ALARM.day : ALARM.moment}`,
          'END:VALARM',
        ]),
    'END:VEVENT',
  ];
}

/**
 * A calendar file: events with an alarm each, whole days as dates, moments in universal time. VEVENT and not VTODO,
 * because phone calendars take in only events; no METHOD, because nobody is invited.
 * @param madeMs when the file is made, Unix milliseconds
 * SOURCE: RFC 5545 (3.4, 3.6.1, 3.6.6, 3.8.7); what phones take in: as remembered.
 */
export function calendarFile(events: readonly CalendarEvent[], madeMs: number): string {
  const stamp = utc(madeMs);
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Blockworth//Reminders//EN',
    'CALSCALE:GREGORIAN',
    ...events.flatMap((event) => linesOf(event, stamp)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}
