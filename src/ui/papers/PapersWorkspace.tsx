export const PapersWorkspace = () => null;
