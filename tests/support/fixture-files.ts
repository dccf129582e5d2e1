import { strToU8, type Zippable, zipSync } from 'fflate';

/** A fixture file as a zip, from its description and other parts. */
export const fixtureFile = (
  description: string,
  parts: Readonly<Record<string, Uint8Array>> = {},
): Uint8Array => zipSync({ 'description.xml': strToU8(description), ...parts } as Zippable);

export interface TypeText {
  readonly attributes?: string;
  readonly physical?: string;
  readonly models?: string;
  readonly geometries?: string;
  readonly modes?: string;
  readonly rest?: string;
  readonly version?: string;
}

/** The description of an invented unit, its sections in the order the standard asks for. */
export const description = (t: TypeText): string => `<?xml version="1.0" encoding="UTF-8" standalone="no" ?>
<GDTF DataVersion="${t.version ?? '1.2'}">
 <FixtureType ${t.attributes ?? 'Name="Test Unit" ShortName="TU" LongName="Invented test unit" Manufacturer="Nobody" Description="" FixtureTypeID="6F1C2B7A-3D54-4E0B-9A61-0C5D7E8F9A10"'}>
  <AttributeDefinitions><Attributes>
   <Attribute Name="Dimmer" Pretty="Dim" Feature="Dimmer.Dimmer"/>
   <Attribute Name="ColorAdd_R" Pretty="R" Feature="Color.RGB"/>
   <Attribute Name="ColorAdd_G" Pretty="G" Feature="Color.RGB"/>
   <Attribute Name="ColorAdd_B" Pretty="B" Feature="Color.RGB"/>
  </Attributes></AttributeDefinitions>
  <Wheels/>
  <PhysicalDescriptions>${t.physical ?? ''}</PhysicalDescriptions>
  <Models>${t.models ?? ''}</Models>
  <Geometries>${t.geometries ?? '<Geometry Name="Body"/>'}</Geometries>
  <DMXModes>${t.modes ?? ''}</DMXModes>
  ${t.rest ?? ''}
 </FixtureType></GDTF>`;

/** A mode with its channels. */
export const mode = (name: string, geometry: string, ...channels: readonly string[]): string =>
  `<DMXMode Name="${name}" Geometry="${geometry}"><DMXChannels>${channels.join('')}</DMXChannels><Relations/></DMXMode>`;

/** A channel: `offset` as written, absent when undefined. */
export const channel = (
  geometry: string,
  offset: string | undefined,
  attribute = 'Dimmer',
  dmxBreak: string | undefined = '1',
  more = '',
): string => {
  const at = offset === undefined ? '' : ` Offset="${offset}"`;
  const part = dmxBreak === undefined ? '' : ` DMXBreak="${dmxBreak}"`;
  return `<DMXChannel${part}${at} Highlight="255/1" Geometry="${geometry}" ${more}><LogicalChannel Attribute="${attribute}"><ChannelFunction Name="F" Attribute="${attribute}" DMXFrom="0/1" Default="0/1"/></LogicalChannel></DMXChannel>`;
};

/** A reference to a geometry, with breaks as pairs of number and offset. */
export const reference = (name: string, target: string, ...breaks: readonly [string, string][]): string =>
  `<GeometryReference Name="${name}" Geometry="${target}">${breaks.map(([n, o]) => `<Break DMXBreak="${n}" DMXOffset="${o}"/>`).join('')}</GeometryReference>`;

const CELLS = [1, 4, 7, 10].map((o, i) => reference(`Cell ${i + 1}`, 'Cell', ['1', String(o)])).join('');

/**
 * A bar of four red, green and blue cells with a 16-bit master, written by hand after the tables of the standard:
 * slots 1 and 2 the master, 3 to 5 cell 1, 6 to 8 cell 2, 9 to 11 cell 3, 12 to 14 cell 4.
 */
export const CELL_BAR = description({
  attributes:
    'Name="Cell Bar 4" ShortName="CB4" LongName="Four cell LED bar" Manufacturer="Generic" Description="sample" FixtureTypeID="6F1C2B7A-3D54-4E0B-9A61-0C5D7E8F9A10"',
  physical:
    '<Properties><OperatingTemperature Low="-10" High="40"/><Weight Value="3.2"/><LegHeight Value="0"/></Properties>',
  models: '<Model Name="Body" Length="1.0" Width="0.08" Height="0.1" PrimitiveType="Cube" File="bar"/>',
  geometries: `<Beam Name="Cell" LampType="LED" PowerConsumption="30" LuminousFlux="900" ColorTemperature="5600" BeamAngle="60" FieldAngle="90" BeamRadius="0.05" BeamType="Wash"/>
   <Geometry Name="Body" Model="Body">${CELLS}
    <WiringObject Name="Supply" ComponentType="Consumer" SignalType="Power" PinCount="3" SignalLayer="1" ElectricalPayLoad="135" VoltageRangeMin="100" VoltageRangeMax="240" FrequencyRangeMin="50" FrequencyRangeMax="60" CosPhi="0.95"/>
    <WiringObject Name="Data in" ConnectorType="XLR5" ComponentType="NetworkInput" SignalType="DMX512" PinCount="5" SignalLayer="2"/>
   </Geometry>`,
  modes: mode(
    '14 slot cells',
    'Body',
    channel('Body', '1,2'),
    channel('Cell', '3', 'ColorAdd_R'),
    channel('Cell', '4', 'ColorAdd_G'),
    channel('Cell', '5', 'ColorAdd_B'),
  ),
});
