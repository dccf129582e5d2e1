import { createContext, useContext } from 'react';
import type { Book } from '../editor/book.ts';
import type { Session } from '../editor/session.ts';
import type { UserBook } from '../gear/index.ts';
import type { Result } from '../kernel/result.ts';
import type { Kind } from '../plan/kinds/kinds.ts';
import type { SaveState } from '../storage/port.ts';
import type { FewestService } from './fewest-service.ts';
import type { PictureService } from './pictures.ts';
import type { RadioService } from './radio-service.ts';

/** What the composition root lends to the screens of an open plan. */
export interface Services {
  readonly session: Session;
  readonly book: Book;
  /** Gear by name, type, watts or nickname, the best match first. */
  readonly searchGear: (query: string, limit: number) => readonly Kind[];
  readonly ownBook: OwnBookService;
  readonly radio: RadioService;
  readonly fewest: FewestService;
  readonly saveState: () => SaveState;
  readonly onSaveState: (listener: (s: SaveState) => void) => () => void;
  readonly takeOver: () => Promise<Result<void>>;
  /** Writes the plan to a real file; the name it was saved under. */
  readonly saveFile: () => Promise<Result<string>>;
  readonly leave: () => void;
  readonly scheme: Scheme;
  readonly setScheme: (s: Scheme) => void;
  /** Gives a produced file to the person: a save dialog or a download. */
  readonly deliver: (name: string, bytes: Uint8Array, mime: string) => Promise<Result<string>>;
  readonly fonts: () => Promise<{ readonly regular: Uint8Array; readonly semibold: Uint8Array }>;
  /** Decodes pictures and PDF pages into what the plan keeps. */
  readonly pictures: PictureService;
  readonly version: string;
  /** Today as YYYY-MM-DD, asked from the clock only by the composition root. */
  readonly today: () => string;
}

/** The person's own gear book, kept apart from the plans. */
export interface OwnBookService {
  get(): UserBook;
  subscribe(listener: () => void): () => void;
  set(book: UserBook): Promise<Result<void>>;
  readonly notices: readonly string[];
}

export type Scheme = 'bench' | 'truck';

export const ServicesContext = createContext<Services | undefined>(undefined);

export const useServices = (): Services => {
  const s = useContext(ServicesContext);
  if (!s) throw new Error('a screen outside an open plan');
  return s;
};
