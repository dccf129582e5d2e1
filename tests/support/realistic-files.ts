import { deflateSync, strToU8 } from 'fflate';
import { channel, mode, reference } from './fixture-files.ts';

/** A fixture type as the builders of its time write it: many sections this program passes over, in the standard's order. */
const written = (
  version: string,
  type: string,
  inner: string,
): string => `<?xml version="1.0" encoding="UTF-8"?>
<GDTF DataVersion="${version}">
  <FixtureType ${type}>
${inner}
  </FixtureType>
</GDTF>
`;

const DEFINITIONS = `<AttributeDefinitions>
  <ActivationGroups><ActivationGroup Name="PanTilt"/><ActivationGroup Name="ColorRGB"/></ActivationGroups>
  <FeatureGroups><FeatureGroup Name="Dimmer" Pretty="Dimmer"><Feature Name="Dimmer"/></FeatureGroup>
   <FeatureGroup Name="Position" Pretty="Position"><Feature Name="PanTilt"/></FeatureGroup></FeatureGroups>
  <Attributes>
   <Attribute ActivationGroup="PanTilt" Feature="Position.PanTilt" Name="Pan" PhysicalUnit="Angle" Pretty="P"/>
   <Attribute ActivationGroup="PanTilt" Feature="Position.PanTilt" Name="Tilt" PhysicalUnit="Angle" Pretty="T"/>
   <Attribute Feature="Dimmer.Dimmer" Name="Dimmer" PhysicalUnit="LuminousIntensity" Pretty="Dim"/>
   <Attribute Feature="Color.RGB" Name="ColorAdd_R" Pretty="R"/><Attribute Feature="Color.RGB" Name="ColorAdd_G" Pretty="G"/><Attribute Feature="Color.RGB" Name="ColorAdd_B" Pretty="B"/>
   <Attribute Feature="Gobo.Gobo" Name="Gobo1" Pretty="G1"/>
  </Attributes></AttributeDefinitions>`;

/** Slots with everything a builder puts on a channel: mirrored and shifted values, sets, wheels, mode masters. */
const rich = (geometry: string, offset: string, attribute: string, dmxBreak = '1'): string =>
  `<DMXChannel DMXBreak="${dmxBreak}" Offset="${offset}" InitialFunction="${geometry}_${attribute}.${attribute}.${attribute} 1" Highlight="255/1" Geometry="${geometry}">
    <LogicalChannel Attribute="${attribute}" Snap="No" Master="Grand" MibFade="0.000000" DMXChangeTimeLimit="0.000000">
     <ChannelFunction Name="${attribute} 1" Attribute="${attribute}" OriginalAttribute="" DMXFrom="0/1" Default="32768/2s" PhysicalFrom="0.000000" PhysicalTo="1.000000" RealFade="0.000000">
      <ChannelSet Name="Closed" DMXFrom="0/1" WheelSlotIndex="0"/><ChannelSet Name="" DMXFrom="1/1" WheelSlotIndex="0"/><ChannelSet Name="Open" DMXFrom="255/1" WheelSlotIndex="1"/>
     </ChannelFunction></LogicalChannel></DMXChannel>`;

const PIXELS = 12;

/**
 * Version 1.1: a moving head with wheels, emitters, filters, a base, a yoke and a head, and a ring of twelve pixels on a
 * second break. Break 1: pan 1 and 2, tilt 3 and 4, dimmer 5, gobo 6. Break 2: three slots a pixel, 36 in all.
 */
export const MOVING_RING = written(
  '1.1',
  'CanHaveChildren="Yes" Description="" FixtureTypeID="3C9F8E57-1A2B-4D3C-8E4F-5A6B7C8D9E03" LongName="Moving head with a pixel ring" Manufacturer="Invented" Name="Ring Spot" RefFT="" ShortName="RS" Thumbnail="thumbnail" ThumbnailOffsetX="0" ThumbnailOffsetY="0"',
  `${DEFINITIONS}
  <Wheels><Wheel Name="Gobo wheel"><Slot Name="Open" Color="0.3127,0.3290,100.000000" MediaFileName=""/><Slot Name="Dots" Color="0.3127,0.3290,100.000000" MediaFileName="dots"/></Wheel></Wheels>
  <PhysicalDescriptions>
   <ColorSpace Mode="sRGB" Name="Default"/>
   <Filters><Filter Name="Warm" Color="0.45,0.41,60.0"><Measurement Physical="100" Transmission="0.6" InterpolationTo="Linear"><MeasurementPoint WaveLength="450" Energy="0.2"/></Measurement></Filter></Filters>
   <Emitters><Emitter Name="Red" Color="0.70,0.29,20.0" DominantWaveLength="625" DiodePart="D1"><Measurement Physical="100" LuminousIntensity="300"/></Emitter></Emitters>
   <DMXProfiles/><CRIs/>
   <Connectors><Connector Name="In" Type="IEC 60320-C14" DMXBreak="0" Gender="0" Length="0"/><Connector Name="DMX" Type="XLR5" DMXBreak="1" Gender="1" Length="0"/></Connectors>
   <Properties><OperatingTemperature Low="-10.000000" High="45.000000"/><Weight Value="21.400000"/>
    <PowerConsumption Connector="16A-CEE" Value="620.000000" PowerFactor="0.970000" VoltageLow="100.000000" VoltageHigh="240.000000" FrequencyLow="50.000000" FrequencyHigh="60.000000"/><LegHeight Value="0.000000"/></Properties>
  </PhysicalDescriptions>
  <Models>
   <Model Name="Base" Length="0.380000" Width="0.320000" Height="0.160000" PrimitiveType="Base" File="base"/>
   <Model Name="Yoke" Length="0.420000" Width="0.180000" Height="0.380000" PrimitiveType="Yoke" File="yoke"/>
   <Model Name="Head" Length="0.280000" Width="0.300000" Height="0.420000" PrimitiveType="Head" File="head"/>
   <Model Name="Pixel" Length="0.020000" Width="0.020000" Height="0.010000" PrimitiveType="Undefined" File=""/>
  </Models>
  <Geometries>
   <Geometry Name="Base" Model="Base" Position="{1.000000,0.000000,0.000000,0.000000}{0.000000,1.000000,0.000000,0.000000}{0.000000,0.000000,1.000000,0.000000}{0.000000,0.000000,0.000000,1.000000}">
    <Axis Name="Yoke" Model="Yoke" Position="{1,0,0,0}{0,1,0,0}{0,0,1,-0.1}{0,0,0,1}">
     <Axis Name="Head" Model="Head" Position="{1,0,0,0}{0,1,0,0}{0,0,1,-0.3}{0,0,0,1}">
      <Beam Name="Lens" Model="" LampType="LED" PowerConsumption="400" LuminousFlux="14000" ColorTemperature="6500" BeamAngle="12" FieldAngle="18" BeamRadius="0.08" BeamType="Spot" ColorRenderingIndex="72"/>
      ${Array.from({ length: PIXELS }, (_, i) => reference(`Pixel ${i + 1}`, 'Pixel', ['1', '1'], ['2', String(1 + 3 * i)])).join('\n      ')}
     </Axis></Axis></Geometry>
   <Beam Name="Pixel" Model="Pixel" LampType="LED" PowerConsumption="6" LuminousFlux="150" ColorTemperature="6500" BeamAngle="90" FieldAngle="120" BeamRadius="0.01" BeamType="Glow"/>
  </Geometries>
  <DMXModes><DMXMode Name="Extended" Description="" Geometry="Base"><DMXChannels>
   ${rich('Yoke', '1,2', 'Pan')}${rich('Head', '3,4', 'Tilt')}${rich('Lens', '5', 'Dimmer')}${rich('Lens', '6', 'Gobo1')}
   ${rich('Pixel', '1', 'ColorAdd_R', '2')}${rich('Pixel', '2', 'ColorAdd_G', '2')}${rich('Pixel', '3', 'ColorAdd_B', '2')}
  </DMXChannels><Relations><Relation Name="M" Master="Lens_Dimmer" Follower="Pixel_ColorAdd_R.ColorAdd_R.ColorAdd_R 1" Type="Multiply"/></Relations><FTMacros/></DMXMode></DMXModes>
  <Revisions><Revision Date="2022-03-01T10:00:00" Text="made up" UserID="1"/></Revisions><FTPresets/>
  <Protocols><FTRDM ManufacturerID="0000" DeviceModelID="0001"><SoftwareVersionID Value="01"><DMXPersonality Value="01" DMXMode="Extended"/></SoftwareVersionID></FTRDM></Protocols>`,
);

/** Version 1.0: a plain wash whose power stands in its properties, one mode with a hole and a virtual dimmer. Slots 1 to 8, 6 and 7 free. */
export const PLAIN_WASH = written(
  '1.0',
  'Name="Plain Wash" ShortName="PW" LongName="" Manufacturer="Invented" Description="" FixtureTypeID="D4E5F6A7-B8C9-4D0E-9F1A-2B3C4D5E6F04" RefFT=""',
  `${DEFINITIONS}<Wheels/>
  <PhysicalDescriptions><Connectors/><Properties><Weight Value="6.5"/><PowerConsumption Value="180" Connector="IEC 60320-C14"/></Properties></PhysicalDescriptions>
  <Models><Model Name="Body" Length="0.3" Width="0.25" Height="0.3" PrimitiveType="Cylinder"/></Models>
  <Geometries><Geometry Name="Body" Model="Body" Position="{1,0,0,0}{0,1,0,0}{0,0,1,0}{0,0,0,1}"><Beam Name="Light" LampType="LED"/></Geometry></Geometries>
  <DMXModes>${mode(
    'Standard',
    'Body',
    channel('Light', '1', 'ColorAdd_R'),
    channel('Light', '2', 'ColorAdd_G'),
    channel('Light', '3', 'ColorAdd_B'),
    channel('Body', '4,5', 'Pan'),
    channel('Body', '8', 'Tilt'),
    channel('Light', 'None', 'Dimmer'),
  )}</DMXModes>`,
);

/** The same as a careless program writes it: letters of another case, a mark at the beginning, attributes missing or empty. */
export const CARELESS = `\uFEFF<?xml version='1.0' encoding='utf-8'?>
<!-- exported -->
<gdtf>
 <fixturetype name="Careless Wash" shortname="" manufacturer="" fixturetypeid="not-a-guid" Strange="yes">
  <AttributeDefinitions/>
  <physicaldescriptions><properties><weight value="6,5"/><powerconsumption value="180" connector=""/></properties></physicaldescriptions>
  <models><model name="Body" length="0.3" width="0.25"/></models>
  <geometries><geometry name="Body" model="Body"><beam name="Light" LampType="led"/></geometry></geometries>
  <dmxmodes><dmxmode name="" geometry="Body"><dmxchannels>
   <dmxchannel offset="1" geometry="Light"><logicalchannel attribute="Dimmer"/></dmxchannel>
   <dmxchannel offset=" 2 , 3 " geometry="Light"><logicalchannel attribute="Pan"><channelfunction DMXFrom="0" Default="128/1"/></logicalchannel></dmxchannel>
  </dmxchannels></dmxmode></dmxmodes>
 </fixturetype>
</gdtf>`;

export const utf16 = (text: string, mark: boolean, bigEndian = false): Uint8Array => {
  const codes = mark ? `\uFEFF${text}` : text;
  const out = new Uint8Array(codes.length * 2);
  for (let i = 0; i < codes.length; i++) {
    const c = codes.charCodeAt(i);
    out[2 * i + (bigEndian ? 1 : 0)] = c & 255;
    out[2 * i + (bigEndian ? 0 : 1)] = c >> 8;
  }
  return out;
};

export interface Part {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Number of the method that the header claims. */
  readonly method?: number;
  readonly flags?: number;
  /** Sizes and checksum follow the data instead of standing in the local header. */
  readonly descriptor?: boolean;
}

const CRC = Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});
const crc32 = (bytes: Uint8Array): number => {
  let c = 0xffffffff;
  for (const b of bytes) c = (CRC[(c ^ b) & 255] ?? 0) ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
};

/** A zip written by hand after APPNOTE 6.3, so that odd but lawful writers can be had. `wide` writes the 64-bit end record. */
export const zipOf = (parts: readonly Part[], wide = false): Uint8Array => {
  const chunks: number[] = [];
  const u16 = (n: number): void => void chunks.push(n & 255, (n >> 8) & 255);
  const u32 = (n: number): void => {
    u16(n & 0xffff);
    u16(n >>> 16);
  };
  const u64 = (n: number): void => {
    u32(n >>> 0);
    u32(0);
  };
  const places = parts.map((p) => {
    const at = chunks.length;
    const method = p.method ?? 8;
    const packed = method === 8 ? deflateSync(p.bytes) : p.bytes;
    const flags = (p.flags ?? 0) | (p.descriptor ? 8 : 0);
    const crc = crc32(p.bytes);
    const name = strToU8(p.name);
    u32(0x04034b50);
    for (const n of [20, flags, method, 0, 0]) u16(n);
    for (const n of p.descriptor ? [0, 0, 0] : [crc, packed.length, p.bytes.length]) u32(n);
    u16(name.length);
    u16(0);
    chunks.push(...name);
    for (const b of packed) chunks.push(b);
    if (p.descriptor) for (const n of [0x08074b50, crc, packed.length, p.bytes.length]) u32(n);
    return { at, method, flags, crc, packed: packed.length, plain: p.bytes.length, name };
  });
  const start = chunks.length;
  for (const p of places) {
    u32(0x02014b50);
    for (const n of [20, 20, p.flags, p.method, 0, 0]) u16(n);
    for (const n of [p.crc, p.packed, p.plain]) u32(n);
    for (const n of [p.name.length, 0, 0, 0, 0]) u16(n);
    u32(0);
    u32(p.at);
    chunks.push(...p.name);
  }
  const size = chunks.length - start;
  if (wide) {
    const at = chunks.length;
    u32(0x06064b50);
    u64(44);
    u16(45);
    u16(45);
    u32(0);
    u32(0);
    for (const n of [places.length, places.length, size, start]) u64(n);
    u32(0x07064b50);
    u32(0);
    u64(at);
    u32(1);
  }
  u32(0x06054b50);
  u16(0);
  u16(0);
  u16(wide ? 0xffff : places.length);
  u16(wide ? 0xffff : places.length);
  u32(wide ? 0xffffffff : size);
  u32(wide ? 0xffffffff : start);
  u16(0);
  return Uint8Array.from(chunks);
};
