import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

const MIXING_HOLDS = [1, 10] as const;
const MIXING_REFUSES = [1, 100] as const;
const FLOW_REFUSES = [0, 1e4] as const;

/**
 * Concentration of vapour in a room after a time (volume fraction).
 *
 * Vapour rate and airflow in m³/s, room in m³, time in s. The mixing factor, 1 perfect to 10 poor, divides the
 * airflow. Refused where the vapour would displace all air of the room: the law is for thin vapours.
 */
export const roomConcentration = formula({
  id: 'vapour/room-concentration',
  says: 'Concentration of vapour in a ventilated room after a time',
  equation: 's + (startConcentration − s) exp(−q time / roomVolume), q = airflow / mixingFactor, s = vapourRate / q',
  takes: {
    vapourRate: 'm³/s',
    airflow: 'm³/s',
    mixingFactor: '1',
    roomVolume: 'm³',
    time: 's',
    startConcentration: '1',
  },
  gives: '1',
  holds: {
    vapourRate: [0, 1],
    airflow: [0, 100],
    mixingFactor: MIXING_HOLDS,
    roomVolume: [1, 1e6],
    time: [0, 604800],
    startConcentration: [0, 0.1],
  },
  refuses: {
    vapourRate: FLOW_REFUSES,
    airflow: FLOW_REFUSES,
    mixingFactor: MIXING_REFUSES,
    roomVolume: [0.01, 1e9],
    time: [0, 1e9],
    startConcentration: [0, 1],
  },
  source: 'room-build-up',
  notes: 'With no vapour rate it is a purge, with no airflow a steady rise. An average: the floor layer is richer.',
  shows: 'concentration',
  inputShows: { airflow: 'airflow', roomVolume: 'gas-volume', time: 'duration', startConcentration: 'concentration' },
  compute: ({ vapourRate, airflow, mixingFactor, roomVolume, time, startConcentration }) => {
    const changes = ((airflow / mixingFactor) * time) / roomVolume;
    // (1 − exp(−x)) / x, which is 1 when nothing is exchanged.
    const held = changes === 0 ? 1 : -Math.expm1(-changes) / changes;
    const concentration = startConcentration * Math.exp(-changes) + ((vapourRate * time) / roomVolume) * held;
    if (concentration > 1) throw new Refuse('vapour-fills-the-room', 'vapourRate');
    return concentration;
  },
});

/** Time until a ventilated room without vapour at first reaches a concentration, s. Refused where it never does. */
export const timeToConcentration = formula({
  id: 'vapour/time-to-concentration',
  says: 'Time until the vapour in a ventilated room reaches a concentration',
  equation: '−(roomVolume / q) ln(1 − concentration q / vapourRate), q = airflow / mixingFactor',
  takes: { vapourRate: 'm³/s', airflow: 'm³/s', mixingFactor: '1', roomVolume: 'm³', concentration: '1' },
  gives: 's',
  holds: {
    vapourRate: [0, 1],
    airflow: [0, 100],
    mixingFactor: MIXING_HOLDS,
    roomVolume: [1, 1e6],
    concentration: [0, 0.1],
  },
  refuses: {
    vapourRate: [1e-12, 1e4],
    airflow: FLOW_REFUSES,
    mixingFactor: MIXING_REFUSES,
    roomVolume: [0.01, 1e9],
    concentration: [0, 1],
  },
  source: 'room-build-up',
  notes: 'The inverse of the build-up from clean air.',
  shows: 'duration',
  inputShows: { airflow: 'airflow', roomVolume: 'gas-volume', concentration: 'concentration' },
  compute: ({ vapourRate, airflow, mixingFactor, roomVolume, concentration }) => {
    const effective = airflow / mixingFactor;
    if (effective === 0) return (concentration * roomVolume) / vapourRate;
    const share = (concentration * effective) / vapourRate;
    if (share >= 1) throw new Refuse('concentration-never-reached', 'concentration', [0, vapourRate / effective]);
    return (-roomVolume / effective) * Math.log1p(-share);
  },
});
