import { WOOD_IDS, WOODS, type WoodId } from '../../core/physics/woods.ts';
import { opening } from '../../text/format.ts';
import { SelectField } from '../../ui/field.tsx';

const options = WOOD_IDS.map((id) => ({ id, label: `${opening(WOODS[id].name)} (${WOODS[id].botanical})` })).sort(
  (a, b) => a.label.localeCompare(b.label, 'en-GB'),
);

/** A wood that has movement figures, by its name. */
export function WoodField({ wood, onChange }: { readonly wood: WoodId; readonly onChange: (wood: WoodId) => void }) {
  return <SelectField label="Wood" value={wood} options={options} onChange={onChange} />;
}
