import type { MiddlewareHandler } from 'hono';
import { secureHeaders } from 'hono/secure-headers';

const COMMON = {
  crossOriginResourcePolicy: 'same-origin',
  crossOriginOpenerPolicy: 'same-origin',
  referrerPolicy: 'same-origin',
  xFrameOptions: 'DENY',
  strictTransportSecurity: false,
} as const;

/** Only what this server itself sends may run or be shown; pictures may also come from memory, for previews before they are sent. */
const ownPages = secureHeaders({
  ...COMMON,
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
});

/** Pages to be given away hold all they show, and run apart from the bench: what stands in them can ask it nothing. */
const pagesToGiveAway = secureHeaders({
  originAgentCluster: false,
  ...COMMON,
  contentSecurityPolicy: {
    defaultSrc: ["'none'"],
    imgSrc: ['data:'],
    styleSrc: ["'unsafe-inline'"],
    scriptSrc: ["'unsafe-inline'"],
    baseUri: ["'none'"],
    formAction: ["'none'"],
    frameAncestors: ["'none'"],
    sandbox: ['allow-scripts'],
  },
});

export const securityHeaders: MiddlewareHandler = (c, next) =>
  (/\/api\/items\/[^/]+\/[a-z]+\.html$/.test(c.req.path) ? pagesToGiveAway : ownPages)(c, next);

/** For what is named by its content and so never changes. */
export const IMMUTABLE = 'private, max-age=31536000, immutable';
