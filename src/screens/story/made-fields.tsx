import { useActions } from '../../parts/actions.ts';
import { DateField } from '../../parts/date-field.tsx';
import { OtherWords } from '../../parts/other-words.tsx';
import type { BlockCase } from '../../parts/use-case.ts';
import { TextField } from '../../ui/field.tsx';

/** Who made it and when, as far as anybody can say. */
export function MadeFields({ of: { block } }: { readonly of: BlockCase }) {
  const actions = useActions();
  return (
    <>
      <TextField
        label="Maker"
        hint="From a struck stamp it is strong, from a loose tag weak. Empty is an answer too."
        value={block.maker}
        onChange={(maker) => actions.setBlock(block, { maker }, 'the maker')}
      />
      <OtherWords record={block} path="maker" />
      <DateField
        label="Made"
        value={block.made}
        onChange={(made) => actions.setBlock(block, { made }, 'the date it was made')}
      />
    </>
  );
}
