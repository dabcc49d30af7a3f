import { expect, it } from 'vitest';
import { createHandsSearch, type HandsWorker } from '../../src/app/handsSearch.ts';
import {
  type HandsAnswer,
  type HandsQuestion,
  sectionHands,
} from '../../src/core/voicing/sectionHands.ts';
import { DEFAULT_VOICING } from '../../src/core/voicing/voicing.ts';
import { chordsToVoice } from '../support/voicings.ts';

/** A worker that answers when it is told to. */
function slowWorker() {
  const questions: HandsQuestion[] = [];
  let answered = 0;
  let listener: ((hands: HandsAnswer) => void) | undefined;
  const worker: HandsWorker = {
    search: (question) => questions.push(question),
    onAnswer: (heard) => {
      listener = heard;
    },
    end: () => {
      listener = undefined;
    },
  };
  return {
    worker,
    questions,
    answer: () => listener?.(sectionHands(questions[answered++]!)),
  };
}

const ask = (symbols: string): HandsQuestion => ({
  chords: chordsToVoice(symbols),
  settings: DEFAULT_VOICING,
});

it('answers with the hands of least cost', () => {
  const { worker, answer } = slowWorker();
  const answers: unknown[] = [];
  createHandsSearch(worker).ask(ask('C F G C'), (hands) => answers.push(hands));
  answer();
  expect(answers).toEqual([sectionHands(ask('C F G C'))]);
});

it('searches only the newest of the questions that wait, and answers only that', () => {
  const { worker, questions, answer } = slowWorker();
  const search = createHandsSearch(worker);
  const answered: string[] = [];
  for (const chord of ['C', 'D', 'E']) search.ask(ask(chord), () => answered.push(chord));
  answer();
  answer();
  expect(questions).toEqual([ask('C'), ask('E')]);
  expect(answered).toEqual(['E']);
});

it('can be asked again after it has answered', () => {
  const { worker, answer } = slowWorker();
  const search = createHandsSearch(worker);
  const answered: string[] = [];
  for (const chord of ['C', 'D']) {
    search.ask(ask(chord), () => answered.push(chord));
    answer();
  }
  expect(answered).toEqual(['C', 'D']);
});

it('answers nothing after it is closed', () => {
  const { worker, answer } = slowWorker();
  const search = createHandsSearch(worker);
  let isAnswered = false;
  search.ask(ask('C'), () => {
    isAnswered = true;
  });
  search.close();
  answer();
  expect(isAnswered).toBe(false);
});
