import { formatEighths, usSize } from '../core/hat-sizes.ts';
import { sizesCm } from '../core/shelf-gaps.ts';
import { useApp } from '../ui/app.ts';
import { SeveralField } from '../ui/several-field.tsx';
import { useActions } from './actions.ts';

/** Head sizes hats are made in, whole centimetres. Common practice, no source. */
const SIZES = [50, 51, 52, 53, 54, 55, 56, 57, 58, 59, 60, 61, 62, 63, 64] as const;

/** The head sizes the owner works in, each a button: gaps on the shelf are counted against them. */
export function UsualSizes({ hideLabel = false }: { readonly hideLabel?: boolean }) {
  const { store } = useApp();
  const actions = useActions();
  const { usualSizes, units } = store.settings.value;
  const chosen = sizesCm(usualSizes);
  const say = (cm: number): string => (units === 'inch' ? `US ${formatEighths(usSize(cm * 10))}` : `${cm} cm`);
  const toggle = (cm: number): void =>
    actions.setSettings({
      usualSizes: (chosen.includes(cm) ? chosen.filter((other) => other !== cm) : [...chosen, cm])
        .sort((a, b) => a - b)
        .map((size) => size * 10),
    });
  return (
    <SeveralField
      label="Head sizes you work in"
      hideLabel={hideLabel}
      options={SIZES.map((cm) => ({ id: cm, label: say(cm), chosen: chosen.includes(cm) }))}
      onToggle={toggle}
    />
  );
}
