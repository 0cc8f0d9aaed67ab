import { degreesProblem, type PositionOrProblem } from './position.ts';

const NUMBER = String.raw`-?\d+(?:\.\d+)?`;
const PARAMETER = String.raw`;[a-z\d-]+(?:=[\w\-.!~*'()[\]:&+$%]+)?`;
const GEO = new RegExp(`^geo:(${NUMBER}),(${NUMBER})(?:,${NUMBER})?((?:${PARAMETER})*)$`, 'i');

/**
 * Reads a `geo:` URI (RFC 5870): latitude, longitude, perhaps a height, which is passed over, then
 * parameters: `crs`, which may only be `wgs84`, and `u`, the uncertainty in metres. Other parameters
 * are passed over, as section 3.4.1 has it. Null for what is no such URI.
 */
export function readGeoUri(text: string): PositionOrProblem | null {
  if (!/^geo:/i.test(text)) return null;
  const found = GEO.exec(text);
  if (!found)
    return {
      problem: `"${text}" is no whole geo: URI: write for example geo:51.12,-2.85;u=35, without spaces.`,
    };
  const [, north, east, rest = ''] = found;
  const parameters = rest
    .split(';')
    .slice(1)
    .map((each) => each.split('='));
  const named = (name: string) => parameters.find(([key]) => key?.toLowerCase() === name)?.[1];
  const system = named('crs') ?? 'wgs84';
  if (system.toLowerCase() !== 'wgs84')
    return {
      problem: `"${text}" goes by ${system}: only wgs84 is read. Write the position in WGS 84.`,
    };
  const u = named('u') ?? (parameters.some(([key]) => key?.toLowerCase() === 'u') ? '' : undefined);
  if (u !== undefined && !/^\d+(?:\.\d+)?$/.test(u))
    return { problem: `u=${u} in "${text}" is no number of metres: write for example u=35.` };
  const latitude = Number(north) + 0;
  const longitude = Number(east) + 0;
  const problem = degreesProblem('latitude', latitude) ?? degreesProblem('longitude', longitude);
  if (problem !== null) return { problem };
  // At a pole every longitude is the same place; section 3.4.2 asks for 0.
  const position = { latitude, longitude: Math.abs(latitude) === 90 ? 0 : longitude };
  // Exactly nothing is what no instrument gives, and Darwin Core has no uncertainty of 0.
  return { position, uncertainty: Number(u ?? 0) > 0 ? Number(u) : null };
}
