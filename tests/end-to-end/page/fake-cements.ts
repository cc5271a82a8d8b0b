import type { Cement } from '../../../shared/cure/cement.ts';
import type { Learned } from '../../../shared/cure/learned.ts';
import { cementWriteSchema } from '../../../shared/messages/cure.ts';
import type { Answer } from './fake-pieces.ts';

/** The stand-in's cements: what the daemon keeps of them, as far as a page needs it. */

const problem = (status: number, message: string): Answer => ({
  status,
  body: { error: { message, where: '' } },
});

const cementPath = /^\/api\/cements\/([^/]+)$/;
const anewPath = /^\/api\/cements\/([^/]+)\/learn-anew$/;

export class FakeCements {
  /** By id, the newest version of each. */
  readonly cements = new Map<string, Cement>();
  readonly learned = new Map<string, Learned>();
  /** Whether what is said of them comes into the book. */
  kept = true;

  keep(cements: readonly Cement[]): void {
    for (const cement of cements) this.cements.set(cement.id, cement);
  }

  /** Null: not an address of cements. */
  get(path: string): Answer | null {
    if (path !== '/api/cements') return null;
    const learned = Object.fromEntries(this.learned);
    return { status: 200, body: { cements: [...this.cements.values()], learned } };
  }

  put(path: string, body: unknown): Answer | null {
    const id = decodeURIComponent(cementPath.exec(path)?.[1] ?? '');
    if (id === '') return null;
    const read = cementWriteSchema.safeParse(body);
    if (!read.success) return problem(400, read.error.message);
    const { basedOn = 0, ...draft } = read.data;
    const version = this.cements.get(id)?.version ?? 0;
    if (basedOn !== version) return problem(409, `There is a version ${version} of it by now.`);
    const cement: Cement = { ...draft, id, version: version + 1, madeAt: '2026-03-04T13:30:00Z' };
    this.cements.set(id, cement);
    return { status: 200, body: cement };
  }

  post({ path }: { readonly path: string }): Answer | null {
    const id = decodeURIComponent(anewPath.exec(path)?.[1] ?? '');
    if (id === '') return null;
    this.learned.delete(id);
    return { status: 200, body: { commandId: 'anew', session: null, kept: this.kept } };
  }
}
