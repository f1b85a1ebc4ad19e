import { describe, expect, it } from 'vitest';
import { AppError, ERROR_CODES } from '../../src/core/errors.ts';
import { ERROR_SENTENCES, sentenceOf } from '../../src/text/errors.ts';

describe('the sentence for an error', () => {
  it.each(ERROR_CODES)('%s says in plain words what to do next', (code) => {
    const sentence = sentenceOf(new AppError(code));
    expect(sentence).toMatch(/^[A-Z].*\.$/);
    expect(sentence.length).toBeLessThan(240);
    expect(sentence).toMatch(
      /\b(tap|make|free|close|reload|restore|start|open|update|export|set|photograph again|take|choose)\b/i,
    );
    expect(sentence).not.toMatch(/quota|database|transaction|exception|error|IndexedDB|synced/i);
  });

  it('has none to spare', () => {
    expect(Object.keys(ERROR_SENTENCES).sort()).toEqual([...ERROR_CODES].sort());
  });

  it('for a fault of ours promises nothing it cannot know', () => {
    expect(sentenceOf(new TypeError('x is undefined'))).toMatch(/Blockworth itself/);
    expect(sentenceOf('text')).toMatch(/reload/);
  });

  it('keeps the cause and the facts for whoever looks closer', () => {
    const cause = new DOMException('', 'QuotaExceededError');
    const error = new AppError('storage-full', { cause, facts: { needed: 12 } });
    expect([error.cause, error.facts, error.message, error.name]).toEqual([
      cause,
      { needed: 12 },
      'storage-full',
      'AppError',
    ]);
  });
});
