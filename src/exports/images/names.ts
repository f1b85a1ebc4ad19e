/** Text for a file name: letters, digits and single hyphens, accents taken off, at most 40 signs. */
export const ascii = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .slice(0, 40)
    .replace(/^-+|-+$/g, '');
