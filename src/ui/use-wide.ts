import { useEffect, useState } from 'preact/hooks';

/** Whether there is room for a table: from 900 px, where the page has its second column. */
export function useWide(): boolean {
  const [query] = useState(() => matchMedia('(min-width: 900px)'));
  const [wide, setWide] = useState(query.matches);
  useEffect(() => {
    const hear = (): void => setWide(query.matches);
    hear();
    query.addEventListener('change', hear);
    return () => query.removeEventListener('change', hear);
  }, [query]);
  return wide;
}
