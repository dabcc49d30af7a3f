import { useEffect, useState } from 'react';
import {
  commandTaught,
  forgotten,
  type MidiCommand,
  type Taught,
  taughtWith,
} from '../../app/midiCommands.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useView } from '../parts/tool/useProject.ts';
import { COMMAND_WORDS, taughtSentence, triggerWords } from './taughtWords.ts';

export type Teaching = {
  readonly taught: Taught;
  /** The command that the next press is taken for. */
  readonly learning: MidiCommand | undefined;
  /** What has come of the last press. */
  readonly says: string | undefined;
  readonly teach: (command: MidiCommand) => void;
  readonly cancel: () => void;
  readonly forget: (command: MidiCommand) => void;
};

/** Teaches keys and pedals of an instrument, and tells what is pressed beside that, to try it. */
export function useTeaching(): Teaching {
  const { midi, view } = useParts();
  const taught = useView((state) => state.taught);
  const [learning, setLearning] = useState<MidiCommand>();
  const [says, setSays] = useState<string>();
  useEffect(() => {
    return midi.onPress((trigger) => {
      const before = view.snapshot().taught;
      if (learning) {
        view.set({ taught: taughtWith(before, learning, trigger) });
        setSays(taughtSentence(learning, trigger, before));
        setLearning(undefined);
        return;
      }
      const command = commandTaught(before, trigger);
      if (command) setSays(`${triggerWords(trigger)}: ${COMMAND_WORDS[command]}.`);
    });
  }, [learning, midi, view]);
  return {
    taught,
    learning,
    says,
    teach: (command) => {
      setSays(undefined);
      setLearning(command);
      void midi.open();
    },
    cancel: () => setLearning(undefined),
    forget: (command) => {
      setSays(undefined);
      view.set({ taught: forgotten(view.snapshot().taught, command) });
    },
  };
}
