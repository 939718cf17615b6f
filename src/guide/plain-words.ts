/**
 * What people say when they mean an answer of the guide, for the search only: it is matched and never shown.
 * Keys are `<item>/<option>`.
 */
export const PLAIN_WORDS: Readonly<Record<string, string>> = {
  'wrong/noise': 'whine hum buzz hiss crackle popping clicks tone headset intercom speaker audio interphone heard',
  'wrong/receiver': 'squelch breaks opens static radio com nav adf vor ils needle swings points poor reception range',
  'wrong/gnss': 'gps gnss satellite position lost jammed signal drops degraded',
  'wrong/complain': 'transmission garbled distorted microphone mic side tone tower hears us noisy carrier',
  'wrong/reading':
    'gauge gauges indicator jumps flickers wanders sensor temperature pressure pointer heading swings flag',
  'wrong/data':
    'bus drops dropout errors messages lost crc parity arinc 429 1553 can rs-485 rs-422 ethernet link packet loss',
  'wrong/reset': 'reboots restarts trips resets false alarm warning latched discrete relay chatters blanks',
  'wrong/compass': 'compass magnetometer flux valve magnetic heading off',
  'wrong/broken': 'dead burnt blown failed damaged short fried destroyed',
  'wrong/plan': 'new box design emission susceptibility test failed qualification do-160 install',
  'when/transmit': 'transmit transmits transmitting keyed keying ptt radio hf vhf uhf push to talk',
  'when/engine': 'engine rpm speed follows alternator generator magneto',
  'when/load': 'load switched pitch changes',
  'when/unit': 'lamp light strobe beacon motor pump blower charger display on',
  'when/switching': 'relay switch contactor plugged power up start starter',
  'when/device': 'phone tablet mobile laptop passenger portable',
  'when/weather': 'snow ice dust cloud rain precipitation static',
  'when/wet': 'wet water damp moisture rain wash humidity',
  'when/storm': 'lightning strike thunderstorm',
  'when/touch': 'touch static shock spark refuel',
}
