export { ensureCertificate, type Certificate, type OwnNames } from './certificate.ts';
export { ownNames } from './own-names.ts';
