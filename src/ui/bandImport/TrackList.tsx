import { type BandTrack, TRACK_ROLES, type TrackRole } from '../../core/rhythm/band.ts';

const ROLE_NAMES: Readonly<Record<TrackRole, string>> = {
  bass: 'bass line',
  picking: 'picking',
  strumming: 'strumming',
  drums: 'drums',
  sung: 'sung line',
  other: 'not used',
};

/** A track's name as the file gives it, or else its number. */
function trackName({ name }: BandTrack, place: number): string {
  return name.trim() || `Track ${place + 1}`;
}

/** The band's tracks with what each seems to be, to be corrected. */
export function TrackList({
  tracks,
  roles,
  onRoles,
}: {
  readonly tracks: readonly BandTrack[];
  readonly roles: readonly TrackRole[];
  readonly onRoles: (roles: readonly TrackRole[]) => void;
}) {
  return (
    <ul className="band-tracks">
      {tracks.map((track, i) => (
        // A file's tracks never change places, and nothing else tells two of one name apart.
        <li key={i}>
          <label>
            <span className="band-track-name">{trackName(track, i)}</span>
            <select
              aria-label={`${trackName(track, i)} is`}
              value={roles[i]}
              onChange={(event) => onRoles(roles.with(i, event.target.value as TrackRole))}
            >
              {TRACK_ROLES.map((role) => (
                <option key={role} value={role}>
                  {ROLE_NAMES[role]}
                </option>
              ))}
            </select>
          </label>
        </li>
      ))}
    </ul>
  );
}
