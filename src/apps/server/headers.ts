import { secureHeaders } from 'hono/secure-headers';

/** Only what this server itself sends may run or be shown; pictures may also come from memory, for previews before they are sent. */
export const securityHeaders = secureHeaders({
  contentSecurityPolicy: {
    defaultSrc: ["'self'"],
    imgSrc: ["'self'", 'blob:', 'data:'],
    objectSrc: ["'none'"],
    baseUri: ["'none'"],
    formAction: ["'self'"],
    frameAncestors: ["'none'"],
    scriptSrc: ["'self'"],
    styleSrc: ["'self'"],
    connectSrc: ["'self'"],
    workerSrc: ["'self'"],
    manifestSrc: ["'self'"],
  },
  permissionsPolicy: { camera: ['self'], microphone: [], geolocation: [], payment: [], usb: [], serial: [] },
  crossOriginResourcePolicy: 'same-origin',
  crossOriginOpenerPolicy: 'same-origin',
  referrerPolicy: 'same-origin',
  xFrameOptions: 'DENY',
  strictTransportSecurity: false,
});

/** For what is named by its content and so never changes. */
export const IMMUTABLE = 'private, max-age=31536000, immutable';
