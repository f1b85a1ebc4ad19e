import type { Settings } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { UsualSizes } from '../../parts/usual-sizes.tsx';
import { ChoiceField } from '../../ui/field.tsx';

const units = [
  { id: 'mm', label: 'Millimetres' },
  { id: 'inch', label: 'Inches' },
] as const;
const scales = [
  { id: 'eighthBelowUs', label: '⅛ under US', text: 'US 7⅛ is UK 7' },
  { id: 'asUs', label: 'As US', text: 'US 7⅛ is UK 7⅛' },
] as const;
const papers = [
  { id: 'a4', label: 'A4', text: '210 × 297 mm' },
  { id: 'letter', label: 'Letter', text: '8½ × 11 in' },
] as const;

/** Units, the scale UK sizes are read on, and the paper reports are laid out for. */
export function AppFields({ settings }: { readonly settings: Settings }) {
  const actions = useActions();
  return (
    <>
      <ChoiceField
        label="Lengths in"
        hint="Shown and typed so; kept in millimetres either way."
        value={settings.units}
        options={units}
        onChange={(unit) => unit && actions.setSettings({ units: unit })}
      />
      <ChoiceField
        label="UK hat sizes"
        hint="The older British custom is an eighth under the US size; some charts print the two alike."
        value={settings.ukHatScale}
        options={scales}
        onChange={(ukHatScale) => ukHatScale && actions.setSettings({ ukHatScale })}
      />
      <UsualSizes />
      <ChoiceField
        label="Paper for reports"
        value={settings.paper}
        options={papers}
        onChange={(paper) => paper && actions.setSettings({ paper })}
      />
    </>
  );
}
