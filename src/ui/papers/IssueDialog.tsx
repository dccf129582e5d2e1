export const IssueDialog = () => null;
