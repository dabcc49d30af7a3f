import { formatMeter, type Meter, parseMeter } from '../../core/time/meter.ts';

/** Meters that a pattern is offered. */
const USUAL = ['2/4', '3/4', '4/4', '5/4', '7/4', '6/8', '7/8', '9/8', '12/8'];

/** The usual meters as they are written, with the pattern's own among them. */
export function offeredMeters(own: Meter): string[] {
  const written = formatMeter(own);
  return USUAL.includes(written) ? USUAL : [...USUAL, written];
}

/** A meter out of `offeredMeters`. */
export function meterWritten(text: string): Meter {
  const meter = parseMeter(text);
  if (!meter.ok) throw new Error(`no meter is written ${text}`);
  return meter.value;
}
