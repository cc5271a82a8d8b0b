import { describe, expect, it } from 'vitest';
import type { Listener, ProbeSource } from '../../../daemon/probe/source.ts';
import { Devices } from '../../../daemon/watching/devices.ts';
