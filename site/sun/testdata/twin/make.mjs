// Writes positions.csv and rises.csv: the sun by two libraries that know nothing of ours.
import { writeFileSync } from "node:fs";
import { Body, Equator, Horizon, Observer, SearchRiseSet } from "astronomy-engine";
import SunCalc from "suncalc";

const places = [
  [0, 0], [-1.3, 36.8], [23.5, 90.4], [35.0, 24.8], [-33.9, 151.2], [-33.9, 18.4], [51.5, -0.1],
  [-54.8, -68.3], [64.1, -21.9], [69.6, 19.0], [78.2, 15.6], [-77.8, 166.7], [89.9, 0], [-89.9, 45],
];
const degrees = (radians) => (radians * 180) / Math.PI;
const day = 86400e3;

// Odd steps of days and hours, so that every season meets every hour.
const positions = ["time,latitude,longitude,first_altitude,first_azimuth,second_altitude,second_azimuth"];
let step = 0;
for (const [latitude, longitude] of places) {
  for (let k = 0; k < 24; k++) {
    const at = new Date(Date.UTC(1988, 0, 3) + Math.round((step++ * 57.389 + k * 5.173 / 24) * day));
    const observer = new Observer(latitude, longitude, 0);
    const place = Equator(Body.Sun, at, observer, true, true);
    const first = Horizon(at, observer, place.ra, place.dec, null);
    const second = SunCalc.getPosition(at, latitude, longitude);
    positions.push([at.toISOString(), latitude, longitude, first.altitude.toFixed(5), first.azimuth.toFixed(5),
      degrees(second.altitude).toFixed(5), ((degrees(second.azimuth) + 540) % 360).toFixed(5)].join(","));
  }
}
writeFileSync("positions.csv", positions.join("\n") + "\n");

// Rise and set of the upper limb, for the clock day of the mean sun; empty where there is none.
const rises = ["date,latitude,longitude,rise,set"];
for (const [latitude, longitude] of places.slice(0, 12)) {
  for (let k = 0; k < 8; k++) {
    const midnight = new Date(Date.UTC(2019, 0, 5 + 46 * k) - Math.round(longitude / 15) * 3600e3);
    const observer = new Observer(latitude, longitude, 0);
    const [rise, set] = [+1, -1].map((way) => SearchRiseSet(Body.Sun, observer, way, midnight, 1)?.date.toISOString() ?? "");
    rises.push([new Date(Date.UTC(2019, 0, 5 + 46 * k)).toISOString().slice(0, 10), latitude, longitude, rise, set].join(","));
  }
}
writeFileSync("rises.csv", rises.join("\n") + "\n");
