import { OpenAPIHono } from '@hono/zod-openapi';
import { answerMisshapen } from './trouble.ts';

/** A set of routes that answers misshapen calls in our own way. */
export const api = (): OpenAPIHono => new OpenAPIHono({ defaultHook: answerMisshapen });

/** The clock, as a UTC instant to the millisecond; handed in so that tests stand still. */
export type Clock = () => string;
