import { NumberField } from '../ui/field.tsx';
import { useActions } from './actions.ts';
import type { BlockCase } from './use-case.ts';

/** How many parts are here, and how many its numbers say there should be. */
export function PartsFields({ of }: { readonly of: BlockCase }) {
  const actions = useActions();
  const { block } = of;
  const usual = of.assessment.setting.type?.parts;
  const chips = [1, 2, 3, 5, 6];
  return (
    <>
      <NumberField
        label="Parts here"
        unit=""
        step={1}
        max={99}
        chips={chips}
        value={block.partsFound}
        onChange={(partsFound) => actions.setBlock(block, { partsFound }, 'the parts counted')}
      />
      <NumberField
        label="Parts there should be"
        hint={
          usual
            ? `Usually ${usual.words}. The numbers struck on the parts decide.`
            : 'The numbers struck on the parts decide.'
        }
        unit=""
        step={1}
        max={99}
        chips={chips}
        value={block.partsExpected}
        onChange={(partsExpected) => actions.setBlock(block, { partsExpected }, 'the parts counted')}
      />
    </>
  );
}
