import type { Wanted } from '../../parts/backup-work.ts';
import { blockName } from '../../parts/block-name.ts';
import { useApp } from '../../ui/app.ts';
import { SelectField, TickField } from '../../ui/field.tsx';

/** What of this device is to go into an archive. */
export type Part = Pick<Wanted, 'scope' | 'isWhole'>;

export const ALL: Part = { scope: { kind: 'shelf' }, isWhole: true };

const keyOf = ({ scope }: Part): string =>
  scope.kind === 'shelf' ? 'all' : scope.kind === 'sale' ? `sale ${scope.id}` : `block ${scope.ids[0]}`;

function partFor(key: string, isWhole: boolean): Part {
  const [kind = 'all', id = ''] = key.split(' ');
  if (kind === 'all' && isWhole) return ALL;
  if (kind === 'all') return { scope: { kind: 'shelf' }, isWhole };
  return { scope: kind === 'sale' ? { kind, id } : { kind: 'blocks', ids: [id] }, isWhole };
}

/** Everything, one sale or one block; for oneself or for somebody else. */
export function PartFields({ part, onChange }: { readonly part: Part; readonly onChange: (part: Part) => void }) {
  const { store, catalogue } = useApp();
  const sales = [...store.records.sale.value.values()];
  const options = [
    { id: 'all', label: 'Everything on this device' },
    ...sales.map(({ id, title }) => ({ id: `sale ${id}`, label: `The sale: ${title || 'without a name'}` })),
    ...store.blocks.value.map((block) => ({ id: `block ${block.id}`, label: blockName(block, catalogue) })),
  ];
  return (
    <div>
      <SelectField
        label="What goes in"
        value={keyOf(part)}
        options={options}
        onChange={(key) => onChange(partFor(key, part.isWhole))}
      />
      <TickField
        label="For somebody else"
        hint="Private people and places, prices and camera files stay out. No backup: what is left out cannot come back from it."
        value={!part.isWhole}
        onChange={(forOthers) => onChange(partFor(keyOf(part), !forOthers))}
      />
    </div>
  );
}
