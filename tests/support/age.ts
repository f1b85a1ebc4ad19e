import { writeFileSync } from 'node:fs';
import { run } from './read-zip.ts';
import { hasTool } from './tools.mjs';

export const hasAge = hasTool('age') && hasTool('python3');

/** The age program asks a terminal for the passphrase, so it is given one. */
const TYPE_IT = `
import os, pty, sys
said = b''
pid, terminal = pty.fork()
if pid == 0:
    os.execvp('age', ['age', '-d', '-o', sys.argv[2], sys.argv[1]])
while True:
    try:
        piece = os.read(terminal, 1024)
    except OSError:
        break
    if not piece:
        break
    said += piece
    if said.endswith(b': '):
        os.write(terminal, (sys.argv[3] + '\\n').encode())
        said += b' '
_, status = os.waitpid(pid, 0)
sys.stdout.write(said.decode('utf-8', 'replace'))
sys.exit(os.waitstatus_to_exitcode(status))
`;

/**
 * Decrypts a file with the age program.
 * @param place a folder to work in
 * @throws Error with what the program said
 */
export function openWithAge(place: string, from: string, to: string, passphrase: string): void {
  writeFileSync(`${place}/type.py`, TYPE_IT);
  run('python3', [`${place}/type.py`, from, to, passphrase]);
}
