export { backupsToRemove, KEPT } from './backups-to-remove.ts';
export { isBackupDue } from './is-backup-due.ts';
export { makeBackup, type BackupParts, type Made } from './make-backup.ts';
export { restoreBackup } from './restore-backup.ts';
export { tryBackup, type BackupDiffers, type Tried } from './try-backup.ts';
