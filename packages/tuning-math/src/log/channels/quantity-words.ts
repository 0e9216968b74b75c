import type { ChannelQuantity } from '../channel-quantities.js';
import type { PrintedUnit } from './unit-words.js';

/** Words by which a header names a quantity, and the dimension that its unit must then have. */
export interface QuantityWords {
  readonly quantity: ChannelQuantity;
  readonly dimension: readonly PrintedUnit['dimension'][];
  readonly words: RegExp;
  readonly not?: RegExp;
}

const OTHER_PRESSURE =
  /\b(fuel|oil|brake|coolant|water|tyre|tire|crank\w*|case|exhaust|back|exh|emap|kraftstoff|ol|rail|benzin|clutch|line|dome)\b/;
const OTHER_SPEED = /\b(turbo\w*|shaft|input|output|target|fan|rear|front|fl|fr|rl|rr|limit\w*|cut)\b/;
const WANTED =
  /\b(target|desired|setpoint|set|requested|request|spec\w*|soll\w*|cmd|command\w*|demand|goal|consigne)\b/;
const ERROR =
  /\b(error|err|dev\w*|delta|diff\w*|correction|corr|limit|max|peak|cut|alarm|flag|status|fault|switch|solenoid|duty|valve|gain|offset)\b/;

/**
 * In order: the first that fits a header, in lower case with words parted, names its quantity.
 * Words of the trade in several languages; common practice, no source.
 */
export const QUANTITY_WORDS: readonly QuantityWords[] = [
  {
    quantity: 'time',
    dimension: ['time'],
    words:
      /^(log )?(time|elapsed|timestamp|time stamp|t|zeit|temps|tiempo|tempo|clock|seconds?|sec|ms|millis\w*|uhrzeit|zeitstempel|heure)\b/,
    not: /\b(injector|inj|pulse|dwell|open|gap|on time|zone|gps date)\b/,
  },
  {
    quantity: 'target-boost-pressure',
    dimension: ['pressure'],
    words: /\b(boost|map|manifold|ladedruck|charge)\b/,
    not: new RegExp(`^(?!.*${WANTED.source})|${ERROR.source}`),
  },
  {
    quantity: 'barometric-pressure',
    dimension: ['pressure'],
    words:
      /\b(baro\w*|bap|ambient pressure|ambient air pressure|atmospheric|atmos\w*|umgebungsdruck|luftdruck|ambient press)\b/,
    not: ERROR,
  },
  {
    quantity: 'boost-pressure',
    dimension: ['pressure'],
    words:
      /\b(boost|ladedruck|overpressure|charge pressure|charge press|surpression|sovralimentazione|manifold gauge|turbo pressure)\b/,
    not: new RegExp(`${OTHER_PRESSURE.source}|${WANTED.source}|${ERROR.source}`),
  },
  {
    quantity: 'manifold-absolute-pressure',
    dimension: ['pressure'],
    words:
      /\b(map|manifold|intake pressure|inlet pressure|saugrohrdruck|intake manifold|plenum|pression admission)\b/,
    not: new RegExp(`${OTHER_PRESSURE.source}|${WANTED.source}|${ERROR.source}|\\b(temp\\w*|temperature)\\b`),
  },
  {
    quantity: 'engine-speed',
    dimension: ['rotation'],
    words:
      /\b(rpm|engine speed|engine rpm|motordrehzahl|drehzahl|eng speed|revs|n mot|nmot|regime|giri|ne)\b/,
    not: OTHER_SPEED,
  },
  {
    quantity: 'undriven-wheel-speed',
    dimension: ['speed'],
    words: /\b(undriven|non driven|gps speed|gps velocity|ground speed|gps)\b/,
    not: /\b(lat\w*|lon\w*|alt\w*|time|date|sat\w*|heading|quality|fix|hdop)\b/,
  },
  {
    quantity: 'vehicle-speed',
    dimension: ['speed'],
    words:
      /\b(speed|vss|velocity|geschwindigkeit|vitesse|velocidad|velocita|road speed|wheel speed|driven|kmh|mph|kph)\b/,
    not: /\b(engine|turbo\w*|fan|shaft|motor|limit\w*|target|ratio|target|idle)\b/,
  },
  {
    quantity: 'pedal',
    dimension: ['share', 'voltage'],
    words: /\b(pedal|app|accelerator|accel pos\w*|accel pedal|fahrpedal|gaspedal|pedale|apps)\b/,
    not: /\b(brake|clutch|accelerat\w*on)\b/,
  },
  {
    quantity: 'throttle',
    dimension: ['share', 'voltage'],
    words: /\b(throttle|tps|drosselklappe\w*|papillon|tp|mariposa|farfalla|throttle position|dk)\b/,
    not: /\b(target|error|body temp\w*|demand|idle|cut|rate|soll)\b/,
  },
  {
    quantity: 'intake-temperature',
    dimension: ['temperature'],
    words:
      /\b(iat|act|intake (air )?temp\w*|inlet (air )?temp\w*|charge (air )?temp\w*|ansaugluft\w*|ladeluft\w*|air temp\w*|intake air|intake t|manifold temp\w*|tcharge|mat)\b/,
    not: /\b(ambient|outside|coolant|exhaust)\b/,
  },
  {
    quantity: 'ambient-temperature',
    dimension: ['temperature'],
    words: /\b(ambient|outside|aussentemp\w*|umgebungstemp\w*)\b/,
  },
  {
    quantity: 'coolant-temperature',
    dimension: ['temperature'],
    words: /\b(coolant|ect|clt|water temp\w*|engine temp\w*|kuhlwasser\w*|kuehlwasser\w*|motortemp\w*)\b/,
    not: /\b(pressure|level)\b/,
  },
  {
    quantity: 'oil-temperature',
    dimension: ['temperature'],
    words: /\b(oil t\w*|oltemp\w*|oeltemp\w*|eot)\b/,
    not: /\b(pressure|press)\b/,
  },
  {
    quantity: 'exhaust-temperature',
    dimension: ['temperature'],
    words: /\b(egt|exhaust (gas )?temp\w*|abgastemp\w*)\b/,
  },
  {
    quantity: 'lambda',
    dimension: ['mixture', 'voltage'],
    words: /\b(lambda|afr|air fuel|wideband|mixture|o2)\b/,
    not: /\b(target|trim|correction|error|soll|narrow\w*)\b/,
  },
  {
    quantity: 'knock-retard',
    dimension: ['angle'],
    words: /\b(knock retard|knock correction|klopf\w*|knock ret|timing retard|retard|kr)\b/,
  },
  {
    quantity: 'knock-count',
    dimension: ['number', 'voltage', 'share'],
    words: /\b(knock|knk|knock count|knocks)\b/,
    not: /\b(threshold|limit|retard|correction|frequency|window)\b/,
  },
  {
    quantity: 'ignition-advance',
    dimension: ['angle'],
    words: /\b(ignition|ign|timing|spark|advance|zundwinkel|zuendwinkel|zund\w*)\b/,
    not: /\b(cut|dwell|target|correction|retard|trim|voltage)\b/,
  },
  {
    quantity: 'solenoid-duty',
    dimension: ['share'],
    words:
      /\b(solenoid duty|boost duty|boost control duty|wastegate duty|gate duty|solenoid|duty|tastverhaltnis|taktventil|boost solenoid|wgdc)\b/,
    not: /\b(injector|inj|fuel|idle|vvt|vanos|cam|fan)\b/,
  },
  {
    quantity: 'gear',
    dimension: ['number'],
    words: /\b(gear|gang|rapport|marcia|marcha|current gear)\b/,
    not: /\b(ratio|target|oil|shift|box|lever|selector)\b/,
  },
  {
    quantity: 'acceleration',
    dimension: ['acceleration'],
    words: /\b(long\w* (accel\w*|g)|accel x|acc x|acceleration|g long|longitudinal)\b/,
    not: /\b(lat\w*|vert\w*|pedal|enrich\w*|pump)\b/,
  },
  { quantity: 'altitude', dimension: ['length'], words: /\b(altitude|height|elevation|gps alt\w*|hohe)\b/ },
];
