#!/usr/bin/env node
/** The program `papervolt`, started from a shell. */
import { papervolt } from './program.ts';
import { standardShell } from './shell.ts';

process.exitCode = papervolt(process.argv.slice(2), standardShell());
