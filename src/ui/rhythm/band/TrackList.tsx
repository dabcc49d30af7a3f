import { useMemo } from 'react';
import {
  type Band,
  type BandTrack,
  TRACK_ROLES,
  type TrackRole,
} from '../../../core/rhythm/band.ts';
import type { BandBars } from '../../../core/rhythm/strokes.ts';
import { Icon } from '../../kit/Icon.tsx';
import { trackDensity, trackFacts, trackName } from './trackWords.ts';
import { useTrackHearing } from './useTrackHearing.ts';

const ROLE_NAMES: Readonly<Record<TrackRole, string>> = {
  bass: 'bass line',
  picking: 'picking',
  strumming: 'strumming',
  accompaniment: 'piano, both hands',
  drums: 'drums',
  sung: 'sung line',
  other: 'not used',
};

/** Stretches of the music in which a track's picture counts notes. */
const STRETCHES = 48;

/** Where in the music a track plays, and how much. */
function TrackPicture({ track, lengthTicks }: { track: BandTrack; lengthTicks: number }) {
  const shares = useMemo(() => trackDensity(track, lengthTicks, STRETCHES), [track, lengthTicks]);
  return (
    <svg
      className="band-track-picture"
      viewBox={`0 0 ${STRETCHES} 10`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      {shares.map((share, i) =>
        share === 0 ? null : (
          <rect key={i} x={i + 0.1} y={10 - (1 + 9 * share)} width={0.8} height={1 + 9 * share} />
        ),
      )}
    </svg>
  );
}

/** The band's tracks with what each seems to be, to be heard by itself and corrected. */
export function TrackList({
  band,
  roles,
  range,
  onRoles,
}: {
  readonly band: Band;
  readonly roles: readonly TrackRole[];
  readonly range: BandBars;
  readonly onRoles: (roles: readonly TrackRole[]) => void;
}) {
  const { heard, toggle } = useTrackHearing(band, roles, range);
  return (
    <ul className="band-tracks">
      {band.tracks.map((track, i) => {
        const name = trackName(track, i);
        return (
          // A file's tracks never change places, and nothing else tells two of one name apart.
          <li key={i} className="band-track">
            <button
              type="button"
              className="quiet"
              aria-label={`Hear ${name} alone`}
              aria-pressed={heard === i}
              onClick={() => toggle(i)}
            >
              <Icon name={heard === i ? 'stop' : 'play'} />
            </button>
            <span className="band-track-what">
              <span className="band-track-name">{name}</span>
              <span className="hint">{trackFacts(track)}</span>
              <TrackPicture track={track} lengthTicks={band.lengthTicks} />
            </span>
            <select
              aria-label={`${name} is`}
              value={roles[i]}
              onChange={(event) => onRoles(roles.with(i, event.target.value as TrackRole))}
            >
              {TRACK_ROLES.map((role) => (
                <option key={role} value={role}>
                  {ROLE_NAMES[role]}
                </option>
              ))}
            </select>
          </li>
        );
      })}
    </ul>
  );
}
