import type { Server } from 'node:http';

export const HOST: string;
export const PORT: number;
export const IDENTITY_PATH: string;
export const identity: () => { app: string; version: string };
export const serve: (folder: string, port?: number) => Promise<Server>;
export const answersAsOurs: (port: number) => Promise<boolean>;
