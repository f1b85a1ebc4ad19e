import type { Locator, Page } from 'playwright-core';
import { catalogue } from '../../src/catalogue/index.ts';

export interface HandedFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/** The app's word for an entry of its catalogue. */
export function term(
  table: 'types' | 'materials' | 'stations' | 'damage' | 'zones' | 'treatments' | 'measures',
  id: string,
): string {
  const entry = catalogue[table][id];
  if (!entry) throw new Error(`No ${table} “${id}” in the catalogue.`);
  return entry.term;
}

/**
 * A person's hands on the app: every label the end-to-end tests go by stands here and nowhere else. Taps are counted, and
 * every key of an on-screen keyboard is one.
 */
export function handsOn(page: Page) {
  let taps = 0;
  const tap = async (target: Locator): Promise<void> => {
    taps += 1;
    await target.tap();
  };
  const type = async (field: Locator, text: string): Promise<void> => {
    await tap(field);
    taps += text.length;
    await field.fill(text);
  };
  const button = (name: string | RegExp, within: Page | Locator = page): Locator =>
    within.getByRole('button', { name, exact: true });
  const link = (name: string | RegExp, within: Page | Locator = page): Locator =>
    within.getByRole('link', { name, exact: true });
  const field = (name: string, within: Page | Locator = page): Locator =>
    within.getByRole('textbox', { name, exact: true });
  const select = (name: string): Locator => page.getByRole('combobox', { name, exact: true });
  const sheet = page.getByRole('dialog');
  const region = (heading: string): Locator =>
    page.locator('section').filter({ has: page.getByRole('heading', { level: 2, name: heading, exact: true }) });
  const shelf = {
    open: (url: string) => page.goto(url),
    isEmpty: page.getByText('An empty shelf.'),
    lookAtABlock: link('Look at a block'),
    openTheExample: button('Open the example sale'),
    picturesComing: page.getByText(/Its photographs are coming/),
    picturesMissing: page.getByText(/could not be fetched now/),
    fetchPictures: button('Fetch them now'),
    takeAway: button('Take the example away'),
    blocks: page
      .getByRole('main')
      .getByRole('link')
      .filter({ has: page.locator('b') }),
    block: (name: string) => page.getByRole('main').getByRole('link').filter({ hasText: name }),
    readyWithoutSignal: page.getByText('Ready without signal.'),
    newVersion: page.getByText('A new version is here.'),
    useItNow: button('Use it now'),
    notSaved: page.getByRole('alert').filter({ hasText: 'Not saved.' }),
    importCutOff: page.getByText('Taking a file in was cut off.'),
    photographsWait: page.getByText(/waits? in a backup file that is not in yet/),
    underWay: (words: string | RegExp) => page.getByText(words),
    see: link('See'),
    tryAgain: button('Try again'),
    unreadable: page.getByText('One record cannot be read.'),
  };

  const menu = (name: 'Shelf' | 'Bench' | 'Sales' | 'Handbook' | 'Settings'): Locator =>
    link(name, page.getByRole('navigation', { name: 'Places' }));

  const look = {
    skipThePhotograph: button('Go on without a photograph'),
    gallery: button('Choose from the gallery'),
    lost: page.getByText('so that photograph is lost.'),
    failures: page.getByRole('alert').filter({ hasText: /not taken:/ }),
    shape: (id: string) => button(term('types', id)),
    wood: (id: string) => button(term('materials', id)),
    price: field('Price asked'),
    sale: select('Where'),
    walk: link('Walk round it'),
  };

  const walk = {
    station: (id: string) => page.getByRole('heading', { level: 1, name: term('stations', id), exact: true }),
    noneSeen: button(/^None of (these|the rest) seen$/),
    onward: button(/^(None of (these|the rest) seen|On to: .*|Round it: see the block)$/),
    found: (kind: string) => button(`Found: ${term('damage', kind)}`),
    finding: (where: string) => page.getByRole('listitem').getByRole('button').filter({ hasText: where }),
    foundAny: button(/^Found: /),
    another: (kind: string) => button(`Another: ${term('damage', kind)}`),
    measure: (id: string) =>
      field((catalogue.measures as Readonly<Record<string, { readonly short: string }>>)[id]?.short ?? id),
    theBlock: link('The block'),
  };

  const finding = {
    sheet,
    zones: sheet.getByRole('radiogroup', { name: 'Where on the block' }),
    zone: (id: string) =>
      sheet.getByRole('radiogroup', { name: 'Where on the block' }).getByRole('radio', { name: term('zones', id) }),
    where: sheet.getByRole('combobox', { name: 'Where', exact: true }),
    number: (label: string) => field(label, sheet),
    chip: (label: string, value: number, unit: string) => button(`${label}: ${value} ${unit}`, sheet),
    yes: (label: string) => sheet.getByRole('checkbox', { name: label, exact: true }),
    note: field('Note', sheet),
    done: button('Done', sheet),
  };

  const answer = {
    dock: page.locator('button[aria-haspopup="dialog"]'),
    verdict: (id: keyof typeof catalogue.verdicts) => page.getByText(catalogue.verdicts[id].term, { exact: true }),
  };

  const block = {
    answer: region('The answer'),
    plan: region('What it would take'),
    photographs: region('Photographs'),
    photograph: region('Photographs')
      .getByRole('link')
      .filter({ has: page.locator('img') }),
    findings: page
      .getByRole('main')
      .locator('li')
      .filter({ has: page.locator('button b') }),
    report: link('Report'),
    walk: link('Walk round it'),
    name: field('Name'),
    note: field('Note'),
    shelf: link('Shelf', page.getByRole('banner')),
    gone: page.getByText('This block is not on this phone.'),
  };

  const report = {
    kind: (name: string) => page.getByRole('radio', { name, exact: true }),
    file: (name: string) => page.getByRole('radio', { name, exact: true }),
    prepare: button('Prepare the report'),
    save: button('Save the file'),
    privateNames: page.getByRole('checkbox', { name: 'Private people and places', exact: true }),
  };

  const keeping = {
    never: page.getByText('Never backed up from this device.'),
    backedUpToday: page.getByText('Last backed up today'),
    prepare: button('Prepare a backup'),
    part: page.getByRole('combobox', { name: 'What goes in', exact: true }),
    forOthers: page.getByRole('checkbox', { name: 'For somebody else', exact: true }),
    prepareArchive: button('Prepare the archive'),
    arrived: button('It has arrived: done'),
    save: button('Save the file'),
    saveFile: (n: number) => button(`Save file ${n}`),
    send: button('Send it'),
    throwAway: button('Throw this backup away'),
    goOn: (file: string) => button(`Go on with ${file}`),
    cutOff: (whole: string) => page.getByText(`was cut off. ${whole}`),
    lock: page.getByRole('checkbox', { name: 'Lock it with a passphrase', exact: true }),
    passphrase: page.getByLabel('Passphrase', { exact: true }),
    again: page.getByLabel('The same again', { exact: true }),
    itsPassphrase: page.getByLabel('Its passphrase', { exact: true }),
    showTyped: page.getByRole('checkbox', { name: 'Show what is typed', exact: true }),
    openIt: button('Open it'),
    straight: page.getByRole('checkbox', { name: 'Write it straight into files I pick', exact: true }),
    pickAPlace: button('Pick a place'),
    takeInPart: button('Take in what is here'),
    stillOut: (files: string) => page.getByRole('note').filter({ hasText: files }),
    importCutOff: page.getByText('was cut off. Choose the same file again to finish'),
    takeItIn: button('Take it in'),
    takeInOne: button('Take in 1 block'),
    takenIn: page.getByRole('status').filter({ hasText: /^Taken in: / }),
    nothingNew: page.getByText('Everything in it is here already.'),
    chosenBlocks: page.getByRole('radio', { name: 'Chosen blocks', exact: true }),
    block: (name: RegExp) => page.getByRole('checkbox', { name }),
    refused: (why: RegExp) => page.getByRole('alert').filter({ hasText: why }),
    stopTaking: button('Stop, and leave everything as it was'),
    choose: button('Choose a backup file'),
    async chooseFiles(files: readonly HandedFile[]): Promise<void> {
      const [chooser] = await Promise.all([page.waitForEvent('filechooser'), keeping.choose.click()]);
      await chooser.setFiles([...files]);
    },
  };

  const radio = (name: string): Locator => page.getByRole('radio', { name, exact: true });
  const quarantine = {
    story: link('Write'),
    paid: radio('Paid'),
    amount: field('Amount'),
    writeOffer: button('Write it down'),
    into: button('Into quarantine'),
    keepApart: button('Keep it apart'),
    until: (day: string) => link(`Quarantine until ${day}`),
    next: (day: string) => page.getByText(`Look next: ${day}`, { exact: true }),
    today: (day: string) => page.getByText(`Look next: ${day}, today`, { exact: true }),
    freshSigns: radio('Fresh signs'),
    seen: field('Seen').first(),
    writeLook: button('Write the look down'),
    leaveEarly: page.locator('summary').filter({ hasText: /^Leave before / }),
    whyEarly: field('Why before its time?'),
    leave: button('Leave early'),
    prepareCalendar: button('Prepare a calendar file'),
    saveCalendar: button('Save the file'),
  };

  const photo = { picture: page.getByRole('main').getByRole('img', { name: 'The photograph' }) };

  const sale = {
    start: button('New sale'),
    title: field('Title'),
    seller: field('Who sells'),
    open: (name: string) => page.getByRole('main').getByRole('link').filter({ hasText: name }),
    lookHere: button('Look at a block here'),
    lots: page.locator('li').filter({ has: link(/^Haggle: /) }),
    lot: (name: string) => page.locator('li').filter({ has: link(new RegExp(`^Haggle: ${name}`)) }),
    haggle: (name: string) => link(new RegExp(`^Haggle: ${name}`)),
    advice: region('With £350'),
    leaveOut: (name: string) => button(new RegExp(`^Leave out: ${name}`)),
    theLots: link('The lots'),
    goHome: link('Go home'),
  };

  const haggle = {
    amount: field('Amount'),
    say: (words: string) => button(words),
    cover: button('Cover the figures'),
    figures: region('Figures'),
    said: region('What was said'),
  };

  const home = {
    became: (name: string) => select(name),
    go: button(/^Go home with /),
  };

  const settings = {
    keeping: link('Keeping'),
    unreadable: (id: string) => page.getByRole('listitem').filter({ hasText: id }),
    pace: region('What your own work has taught'),
  };

  const bench = {
    empty: page.getByText('Nothing on the bench.'),
    putOnTheList: button('Put it on the list of work to do'),
    lastDay: page.getByText('All of it can be ready on'),
    start: (step: string) => button(`Start: ${step}`),
    done: (step: string) => button(`Done: ${step}`),
    timer: page.getByRole('timer'),
    step: (name: string) => region('What it would take').locator('summary').filter({ hasText: name }),
    waiting: region('Waiting'),
    readyToGoOn: region('Ready to go on'),
  };

  const undo = button(/^Undo /);
  /** Said to a screen reader, so it is there whether or not the bar shows. */
  const status = page.getByRole('status').filter({ hasText: /^(Saving…|Saved on this phone|Not saved)$/ });

  return {
    page,
    ...{ tap, type, shelf, menu, look, walk, finding, answer, block, quarantine, photo, report, sale, haggle, home },
    ...{ keeping, settings, bench, undo, status },
    taps: () => taps,
    saved: () => status.filter({ hasText: 'Saved on this phone' }).waitFor(),
    notSaved: () => status.filter({ hasText: 'Not saved' }).waitFor(),
    /** Chooses files through the real file input, as the gallery hands them over. */
    async choose(files: readonly HandedFile[]): Promise<void> {
      const [chooser] = await Promise.all([page.waitForEvent('filechooser'), look.gallery.click()]);
      taps += 1;
      await chooser.setFiles([...files]);
    },
    /** A block looked at without a photograph, as far as the first answer. */
    async glance({ shape, wood, price }: { shape: string; wood: string; price: string }): Promise<void> {
      await tap(shelf.lookAtABlock);
      await tap(look.skipThePhotograph);
      await tap(look.shape(shape));
      await tap(look.wood(wood));
      await type(look.price, price);
      await answer.dock.waitFor();
    },
    /** Prepares the report and takes the file the browser is given to save. */
    async takeReport(file = 'One page for any browser'): Promise<{ readonly name: string; readonly path: string }> {
      await report.file(file).check();
      await tap(report.prepare);
      await report.save.waitFor({ timeout: 30_000 });
      const [download] = await Promise.all([page.waitForEvent('download'), tap(report.save)]);
      return { name: download.suggestedFilename(), path: await download.path() };
    },
  };
}

export type Hands = ReturnType<typeof handsOn>;
