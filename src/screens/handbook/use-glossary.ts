import { useMemo } from 'preact/hooks';
import { type GlossarySection, glossaryOf } from '../../text/glossary.ts';
import { useApp } from '../../ui/app.ts';

export function useGlossary(): readonly GlossarySection[] {
  const { catalogue } = useApp();
  return useMemo(() => glossaryOf(catalogue), [catalogue]);
}
