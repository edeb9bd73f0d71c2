using System.Buffers.Binary;

namespace Mastwright.Tests.EndToEnd;

/// <summary>A plan of two stations on one small tile: what the tests of bad input start from, quick to run.</summary>
internal static class SmallPlan
{
    /// <summary>Points along one side of a 3 arc-second tile.</summary>
    private const int Side = 1201;

    public const string Text = """
        mastwright: 1
        name: Two hills
        ground:
          heights:
            - files: ground/*.hgt
              kind: bare-earth
              datum: EGM96
        air: {refractivity-gradient: 45, surface-refractivity: 325, external-noise: 3 dB}
        modem: {frequency: 869.525 MHz, bandwidth: 125 kHz, spreading-factor: 10, payload: 40 B}
        sites:
          west:
            position: 46.40, -18.70
            in-use: pole
            fit-outs:
              pole:
                antenna: {gain: 5 dBi, height: 12 m}
                radio: {power: 14 dBm, noise-figure: 6 dB, frequency-error: 2 ppm}
        neighbours:
          east:
            position: 46.41, -18.60
            height: 12 m
            gain: 2 dBi
            power: 14 dBm

        """;

    /// <summary>Rules of an invented country that leave nothing open: what ships for real ones rests in part on memory.</summary>
    private const string Law = """
        format: 1
        radio-regions:
          - {key: XX, name: Exampleland, law: an invented law}
        radio-rules:
          - {key: xx-band, region: XX, name: the band, from-mhz: 860, to-mhz: 880, eirp-mw: 500, document: Invented act, edition: "1", clause: a, read: 2026-11-28}
        exposure-limits:
          - {key: xx-public, region: XX, for: public, over: whole body, from-mhz: 1, to-mhz: 2000, watts-per-square-metre: 4, frequency-power: 0, averaging-minutes: 6, document: Invented act, edition: "1", clause: b, read: 2026-11-28}
          - {key: xx-workers, region: XX, for: workers, over: whole body, from-mhz: 1, to-mhz: 2000, watts-per-square-metre: 20, frequency-power: 0, averaging-minutes: 6, document: Invented act, edition: "1", clause: b, read: 2026-11-28}

        """;

    /// <summary>A mast that holds, on ground of one's own, with everything asked for and a rod above the antenna.</summary>
    private const string Standing = """
                feed: [{surge-arrester: 0.1 dB}]
                return-loss: 20 dB at antenna
                mast:
                  tubes: [{size: alu-50x3, grade: aw-6082-t6, length: 2 m, welded: no}]
                  bracket: {height: 9.5 m, spacing: 1 m, capacity: 20 kN, fixed-to: concrete}
                earthing: {class: III, air-termination: rod, rod-height: 16 m, rod-distance: 0.5 m, conductor: 25 mm², material: aluminium, lightning-protection: no, data-cable: none}
                box: {temperature: 10…25 °C}
            hazards:
              overhead-line-distance: 200 m
              local-clearance: 6 m
              access: tilt-over
              working-height: 1.5 m
              fall-zone: own-ground
              consents: {owner: granted, planning: granted, airfield: not-needed}
            wind: {speed: 26 m/s, averaging: ten-minute-mean, return-period: 50 years, level: characteristic, form: en-1991-1-4, terrain: II}

        """;

    /// <summary>Writes the plan with a law of its own, everything that the law asks for, and all that stands and hurts told, so that no finding is unknown.</summary>
    public static string WriteLawful(TemporaryFolder folder, string? text = null, short wallMetres = 10)
    {
        folder.Write("law.yaml", Law);
        return Write(
            folder,
            (text ?? Text)
                .Replace("name: Two hills\n", "name: Two hills\nregion: XX\ncatalogue: law.yaml\n", StringComparison.Ordinal)
                .Replace("frequency-error: 2 ppm}\n", "frequency-error: 2 ppm, frequency-drift: 2 ppm}\n        people: {public: 5 m, workers: 1 m}\n" + Standing, StringComparison.Ordinal)
                .Replace("height: 12 m}\n", "height: 12 m, total-length: 1 m, diameter: 25 mm, mass: 600 g}\n", StringComparison.Ordinal),
            wallMetres);
    }

    /// <summary>Writes the plan and its ground: flat land at 10 m with a wall of the given height half-way.</summary>
    public static string Write(TemporaryFolder folder, string? text = null, short wallMetres = 10)
    {
        WriteTile(folder, "N46W019.hgt", wallMetres);
        return folder.Write("plan.yaml", text ?? Text);
    }

    /// <summary>Writes a tile of the plan's ground under any name.</summary>
    public static void WriteTile(TemporaryFolder folder, string name, short wallMetres = 10)
    {
        Directory.CreateDirectory(folder.File("ground"));
        File.WriteAllBytes(folder.File("ground/" + name), Tile(wallMetres));
    }

    /// <summary>The bytes of a 3 arc-second tile.</summary>
    public static byte[] Tile(short wallMetres)
    {
        byte[] bytes = new byte[Side * Side * 2];
        const int Wall = (int)((19 - 18.65) * (Side - 1));
        for (int row = 0; row < Side; row++)
        {
            for (int column = 0; column < Side; column++)
            {
                short metres = column is >= Wall - 2 and <= Wall + 2 ? wallMetres : (short)10;
                BinaryPrimitives.WriteInt16BigEndian(bytes.AsSpan(((row * Side) + column) * 2), metres);
            }
        }

        return bytes;
    }
}
