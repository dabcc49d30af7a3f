import type { PatternId } from '../core/ids.ts';
import { err, ok, type Result } from '../core/result.ts';
import type { Band, BandBar, BandTrack, TrackRole } from '../core/rhythm/band.ts';
import { type Barring, rebarred } from '../core/rhythm/bandMeter.ts';
import { steadiestRange } from '../core/rhythm/bandRange.ts';
import { type FirstHands, firstHands } from '../core/rhythm/firstHands.ts';
import { type Fold, foldStrokes } from '../core/rhythm/fold.ts';
import type { Period } from '../core/rhythm/foldPeriod.ts';
import { grooveOf } from '../core/rhythm/foldSources.ts';
import { HAND_LIMITS, type HandLimits } from '../core/rhythm/handLimits.ts';
import { type HandRules, rulesForBand } from '../core/rhythm/handRules.ts';
import type { Pattern } from '../core/rhythm/pattern.ts';
import { type BandBars, bandStrokes } from '../core/rhythm/strokes.ts';
import { formatMeter, type Meter, sameMeter, tempoBeatTicks } from '../core/time/meter.ts';
import type { Bpm } from '../core/time/tempoMap.ts';
import { decodeMidi, type MidiError } from '../formats/midi.ts';

export type { MidiError } from '../formats/midi.ts';

/** A file's band with what is proposed for it: a role for each track and the bars to fold. */
export type OpenedBand = { readonly band: Band; readonly choice: BandChoice };

/**
 * What the user chooses. `roles` has one entry for each track; bars by index, both included, in one
 * meter; `period` in bars, or the shortest that repeats.
 */
export type BandChoice = BandBars & {
  readonly roles: readonly TrackRole[];
  readonly period: Period | 'auto';
  readonly rules: HandRules;
};

/** Why a choice gives no pattern: bars that are not there, more than one meter, nobody plays in them. */
export type ProposalError =
  | { readonly kind: 'no-such-bars'; readonly bars: number }
  | {
      readonly kind: 'meter-changes';
      readonly atBar: number;
      readonly from: string;
      readonly to: string;
    }
  | { readonly kind: 'nothing-played' };

/**
 * A pattern made from the band with the hands that are proposed first, what was weighed for them
 * (`FirstHands`), the fold it was made from, and the band's tempo there, in beats of the pattern's meter.
 */
export type Proposal = {
  readonly pattern: Pattern;
  readonly first: FirstHands;
  readonly fold: Fold;
  readonly bpm: Bpm;
};

/** Opens a MIDI file and proposes what to take from it: every track's guessed role, the steadiest bars. */
export function openBand(bytes: Uint8Array): Result<OpenedBand, MidiError> {
  const band = decodeMidi(bytes);
  return band.ok ? ok({ band: band.value, choice: proposedChoice(band.value) }) : band;
}

/** A band barred anew (`rebarred`), with the choice that is made for the user in its new bars; roles and rules stay. */
export function openedAnew({ band, choice }: OpenedBand, barring: Barring): OpenedBand {
  const anew = rebarred(band, barring);
  return { band: anew, choice: { ...choice, ...steadiestRange(anew, choice.roles) } };
}

/** The choice that is made for the user: roles as guessed, the steadiest stretch, the shortest period. */
export function proposedChoice(band: Band): BandChoice {
  const roles = band.tracks.map((track: BandTrack) => track.guess);
  return {
    roles,
    ...steadiestRange(band, roles),
    period: 'auto',
    rules: rulesForBand(roles.includes('bass') || roles.includes('accompaniment')),
  };
}

function meterOf(band: Band, { firstBar, lastBar }: BandBars): Result<Meter, ProposalError> {
  const bars = band.bars.slice(firstBar, lastBar + 1);
  const first = bars[0];
  if (!first || firstBar < 0 || lastBar >= band.bars.length)
    return err({ kind: 'no-such-bars', bars: band.bars.length });
  const change = bars.findIndex((bar) => !sameMeter(bar.meter, first.meter));
  if (change < 0) return ok(first.meter);
  return err({
    kind: 'meter-changes',
    atBar: firstBar + change,
    from: formatMeter(first.meter),
    to: formatMeter(bars[change]!.meter),
  });
}

/** The band's tempo at the start of one of its bars, in beats of that bar's meter. */
export function tempoOfBar({ tempoMap }: Band, { startTick, meter }: BandBar): Bpm {
  const { tempo } = tempoMap.findLast(({ tick }) => tick <= startTick) ?? tempoMap[0]!;
  return (tempo.bpm * tempo.beatTicks) / tempoBeatTicks(meter);
}

/** The file's name without its folder and ending, words apart; "Band" where nothing is left. */
export function patternName(fileName: string): string {
  const base = fileName.replace(/^.*[\\/]/, '').replace(/\.[^.]*$/, '');
  return base.replaceAll(/[_\s]+/g, ' ').trim() || 'Band';
}

/**
 * Folds the chosen bars and derives both hands, within what the player's hands do at the band's tempo: a
 * whole pattern with the band as its sources. Bars in errors are indices from 0.
 */
export function proposePattern(
  band: Band,
  choice: BandChoice,
  named: { readonly id: PatternId; readonly name: string },
  limits: HandLimits = HAND_LIMITS,
): Result<Proposal, ProposalError> {
  const meter = meterOf(band, choice);
  if (!meter.ok) return meter;
  const { sources, strokes, beats } = bandStrokes(band, choice.roles, choice);
  const bpm = tempoOfBar(band, band.bars[choice.firstBar]!);
  const period = choice.period === 'auto' ? {} : { period: choice.period };
  const fold = foldStrokes(strokes, beats, meter.value, { ...period, beatSec: 60 / bpm });
  const groove = grooveOf(fold, sources);
  if (groove.sources.length === 0) return err({ kind: 'nothing-played' });
  const first = firstHands(groove, bpm, choice.rules, limits);
  return ok({ pattern: { ...named, ...groove, ...first.hands }, first, fold, bpm });
}
