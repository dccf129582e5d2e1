export const POLICY: string;
export const HEADER_POLICY: string;
