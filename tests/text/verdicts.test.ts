import { describe, expect, it } from 'vitest';
import { lossSentence, reasonSentence } from '../../src/text/verdicts.ts';

describe('the answer in sentences', () => {
  it.each([
    [0.01, 'At the price asked you would hardly ever lose by it.'],
    [0.1, 'At the price asked you would lose by it 1 time in 10.'],
    [0.31, 'At the price asked you would lose by it 3 times in 10.'],
    [0.96, 'At the price asked you would lose by it more than 9 times in 10.'],
    [1, 'At the price asked you would practically always lose by it.'],
  ])('says in English word order how often a price loses: %s', (chance, sentence) => {
    expect(lossSentence(chance)).toBe(sentence);
  });

  it('counts one thing in the singular', () => {
    const say = (count: number) => reasonSentence({ rule: 'unknownEssentials', count }, String);
    expect(say(1)).toBe('One thing that decides was not looked at yet.');
    expect(say(6)).toBe('6 things that decide were not looked at yet.');
  });
});
