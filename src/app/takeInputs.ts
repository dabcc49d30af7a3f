import type { AudioRoom } from '../audio/context.ts';
import { openMicrophone } from '../audio/microphone.ts';
import type { InputSees } from '../core/practice/expectedHits.ts';
import { err, ok, type Result } from '../core/result.ts';
import type { HandName } from '../core/voicing/voicing.ts';
import type { HitInput, InputError } from '../input/hitInput.ts';
import { twoKeys, twoPads } from '../input/keyInput.ts';
import { microphoneOnsets } from '../input/microphoneInput.ts';
import { type MidiDevices, midiKeys } from '../input/midiInput.ts';

/** What a player can be heard with. */
export const INPUT_KINDS = ['keys', 'pads', 'midi', 'microphone'] as const;

export type InputKind = (typeof INPUT_KINDS)[number];

/** How one kind of input is listened to (its device is opened then), and what it can tell. */
export type KindOfInput = { readonly listen: HitInput; readonly sees: InputSees };

/** The two pads as they stand on the page. */
export type Pads = Readonly<Record<HandName, EventTarget>>;

export type TakeInputsParts = {
  /** Where computer keys are pressed: the window. */
  readonly keyTarget: EventTarget;
  /** The pads that are on the page now, if any. */
  readonly pads: () => Pads | undefined;
  /** The room that a microphone is opened in. */
  readonly openRoom: () => Promise<Result<Pick<AudioRoom, 'context'>, { readonly reason: string }>>;
  /** The instruments that are played, once the browser has let them be heard. */
  readonly openMidi: () => Promise<Result<MidiDevices, InputError>>;
};

/** Every kind of input. A device is asked for when it is first listened to; a microphone is let go when that ends. */
export function takeInputs(parts: TakeInputsParts): Readonly<Record<InputKind, KindOfInput>> {
  return {
    keys: { listen: twoKeys(parts.keyTarget), sees: 'hands' },
    pads: {
      sees: 'hands',
      listen: async (hearing) => {
        const pads = parts.pads();
        return pads ? twoPads(pads)(hearing) : err({ kind: 'no-device' });
      },
    },
    midi: {
      sees: 'keys',
      listen: async (hearing) => {
        const devices = await parts.openMidi();
        return devices.ok ? midiKeys(devices.value)(hearing) : devices;
      },
    },
    microphone: { listen: microphoneIn(parts.openRoom), sees: 'onsets' },
  };
}

function microphoneIn(openRoom: TakeInputsParts['openRoom']): HitInput {
  return async (hearing) => {
    const room = await openRoom();
    if (!room.ok) return err({ kind: 'refused', text: room.error.reason });
    const microphone = await openMicrophone(room.value);
    if (!microphone.ok) return microphone;
    const stop = await microphoneOnsets(microphone.value)(hearing);
    const stopWatching = microphone.value.onLost(() => hearing.onLost?.());
    return ok(() => {
      stopWatching();
      if (stop.ok) stop.value();
      microphone.value.close();
    });
  };
}
