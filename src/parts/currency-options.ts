/** Currencies offered first; any other the platform knows follows by its code. */
const USUAL = ['GBP', 'EUR', 'USD'] as const;

function nameOf(code: string): string {
  try {
    return new Intl.DisplayNames('en-GB', { type: 'currency' }).of(code) ?? code;
  } catch {
    return code;
  }
}

/** Every ISO 4217 code the platform knows, the usual three first; `current` is always among them. */
export function currencyOptions(current: string): readonly { readonly id: string; readonly label: string }[] {
  const known = Intl.supportedValuesOf?.('currency') ?? [];
  const codes = [...new Set([...USUAL, current, ...known])];
  return codes.map((id) => ({ id, label: nameOf(id) === id ? id : `${id} – ${nameOf(id)}` }));
}
