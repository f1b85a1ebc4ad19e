import { entry } from '../core/catalogue.ts';
import { useApp } from '../ui/app.ts';
import type { BlockCase } from './use-case.ts';

/** Names for ids, and for what the catalogue does not know, the id itself marked as such. */
export function useNames(of: Pick<BlockCase, 'findings'>) {
  const { catalogue } = useApp();
  const kindTerm = (id: string): string => entry(catalogue.damage, id)?.term ?? `“${id}” (from a newer version)`;
  const zoneTerm = (id: string): string => entry(catalogue.zones, id)?.term ?? id;
  const treatmentTerm = (id: string): string => entry(catalogue.treatments, id)?.term ?? id;
  return {
    kindTerm,
    zoneTerm,
    treatmentTerm,
    /** `2 Split`: the number on the drawing and the term. */
    findingName: (findingId: string): string => {
      const finding = of.findings.find(({ id }) => id === findingId);
      return finding ? `${kindTerm(finding.kind)} (no. ${finding.number})` : 'A removed finding';
    },
  };
}
