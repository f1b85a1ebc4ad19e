import { describe, expect, it } from 'vitest';
import { anyOf, isTelling, wordsOfName } from '../../src/text/private-names.ts';

const says = (name: string, text: string): boolean => anyOf([name], 'iu')?.test(text) ?? false;

// Forms of Unicode: UAX #15; two keyboards write the same accent as one sign or as two.
describe('a private name in somebody’s words', () => {
  it('is found however its accents are written, and without them, as a file name has it', () => {
    for (const text of ['Zo\u00eb came', 'Zoe\u0308 came', 'zoe-came.pdf']) {
      expect(says('Zo\u00eb', text), text).toBe(true);
      expect(says('Zoe\u0308', text), text).toBe(true);
    }
  });

  it('is found with either apostrophe, over the end of a line and joined by hyphens', () => {
    expect(says("Ann O'Fenn", 'of Ann\nO’Fenn’s')).toBe(true);
    expect(says('Elm Cottage', 'Elm-Cottage-cloche.pdf')).toBe(true);
  });

  it('is found in a script without spaces, where two signs are a whole name', () => {
    expect(says('王芳', '昨日王芳说')).toBe(true);
    expect(says('林', '林木')).toBe(false);
  });

  it('is not found inside another word, nor when it is hardly there', () => {
    expect(says('Kit', 'Kitchen oven')).toBe(false);
    expect(anyOf(['', ' ', 'a.', 'Li'], 'iu')).toBeNull();
    expect(says('a.c', 'abc')).toBe(false);
  });

  it('stands for its owner by each large-lettered word but titles and months', () => {
    expect(wordsOfName('Mrs Kit van Zoe\u0308l').filter(isTelling)).toEqual(['Kit', 'Zo\u00ebl']);
  });
});
