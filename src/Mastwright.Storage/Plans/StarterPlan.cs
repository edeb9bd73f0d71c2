namespace Mastwright.Storage.Plans;

/// <summary>The commented plan that a keeper starts from.</summary>
public static class StarterPlan
{
    /// <summary>The text of a plan that reads without a problem: two invented stations to be replaced by one's own.</summary>
    /// <param name="name">Name of the plan.</param>
    public static string Text(string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        string clean = new([.. name.Select(c => char.IsSurrogate(c) || !ScalarBinder.IsText(c.ToString()) ? ' ' : c)]);
        return Template.ReplaceLineEndings("\n").Replace("{name}", YamlScalar.Write(clean.Trim()), StringComparison.Ordinal);
    }

    /// <summary>Writes the starter plan to a file that is not there yet.</summary>
    /// <param name="path">The file.</param>
    /// <param name="name">Name of the plan.</param>
    /// <returns>Null when it was written; else why not: a file of that name is never overwritten.</returns>
    public static PlanProblem? Write(string path, string name)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        return PlanSaver.Create(path, Text(name));
    }

    private const string Template = """
        # A plan for Mastwright. Everything after a # is a remark. The two stations below are invented: put yours in their place.
        # Numbers carry their unit. "6 ± 2 m" or "4…8 m" says how well you know one; the verdict is then worked out over the range.
        # What you leave out is filled with a named default and listed as assumed.

        mastwright: 1                  # version of this format
        name: {name}
        # region: EU                   # whose radio rules and limits of exposure apply: EU (or DE, FR …), UK, US, NZ

        # Where the heights come from: files beside this plan, or fetched with "ground fetch".
        ground:
          heights:
            - files: ground/*.hgt
              kind: bare-earth         # or surface, when the heights include trees and roofs
              datum: EGM96
          # cover:                     # land cover (trees, houses, water), when you have it
          #   - files: ground/cover/*.tif

        # air:
        #   refractivity-gradient: 45  # N-units/km
        #   surface-refractivity: 325  # N-units
        #   low-k: 0.8                 # the worst air to plan for
        #   maps: itu                  # or take both from DN50.TXT and N050.TXT of ITU-R P.1812 in this folder
        #   external-noise: 3 dB

        # Both ends of a link share this. Take it from your modem's settings.
        modem:
          frequency: 869.525 MHz
          bandwidth: 125 kHz
          spreading-factor: 10
          coding-rate: 4/5
          preamble: 8
          payload: 40 B                # everything that the modem sends in a packet, headers included

        # Packets an hour of each station: its own, and those that it passes on. The rules count the busiest hour.
        # traffic: {own: 4, own-worst-hour: 12, relayed: 20, relayed-worst-hour: 80}

        # The basic wind of your place, from its national annex or a wind map. It carries its kind: a gust is not a mean.
        # wind: {speed: 26 m/s, averaging: ten-minute-mean, return-period: 50 years, level: characteristic, form: en-1991-1-4, terrain: II}

        wanted:
          margin: 10 dB                # a link with less is "tight"
          time: 50 %
          location: 50 %

        # Your own sites. The word before the colon is the key of the site: small letters, digits, hyphens. It stays when the name changes.
        sites:
          home:
            name: Home
            position: 46.3981, -18.6700 ± 5 m
            in-use: pole               # which of the fit-outs below stands there now
            # hazards: {overhead-line-distance: 40…200 m, local-clearance: 3 m, access: ladder, fall-zone: own-ground, consents: {owner: granted}}
            fit-outs:
              pole:
                name: Collinear on the garden pole
                antenna:
                  gain: 5 dBi          # dBi or dBd, as the data sheet says
                  height: 6 m          # centre of the antenna
                  above: ground        # or roof (then add roof: 7 m), or sea-level (then add datum: EGM96)
                  polarisation: vertical
                  pattern: average-side-lobes
                  # total-length: 0.9 m      # over all, for the wind; diameter (or wind-area) and mass too
                  # diameter: 22 mm
                  # mass: 0.6 kg
                feed:                  # from the radio to the antenna
                  - connectors: 2      # mated pairs
                  - line: rg-213
                    length: 8 m
                # return-loss: 18 dB at radio
                radio:
                  power: 14 dBm        # at the radio's antenna connector
                  noise-figure: 6 dB
                  frequency-error: 10 ppm
                  # frequency-drift: 5 ppm   # further error over the box's temperatures
                  # drift-temperatures: -30…85 °C   # for which that drift is stated
                  # approved-gain: 5 dBi     # the antenna that the radio's papers name: most gain, and whether its type is among them
                  # approved-antenna: yes
                # From the source to the loads: how many watts, whether it starts, how long a battery lasts. Add "battery: li-ion" to hold it up.
                # supply: [{power-over-cable: class-3}, {data-cable: cat-5e, length: 20 m}, {converter: 5 V, kind: isolated}, {radio: chirp-node}]
                # The box: heat, cold, dew, water. outside is the air there: coldest, on the whole, hottest.
                # box: {width: 200 mm, height: 300 mm, depth: 120 mm, material: plastic, colour: light-grey, mounting: free, seal: vent-plug, outside: 12 (-8…32) °C, exposure: rain, ip: IP66, entries: down, connectors: down, parts: {radio: {temperature: -20…70 °C}}}
                # The mast from its upper bracket up. No verdict on it is ok before bracket/capacity says what the wall bears.
                # mast: {tubes: [{size: steel-48.3x3.2, grade: s235, length: 2 m}], bracket: {spacing: 0.6 m, fixed-to: masonry}, clamp: zinc}
                # earthing: {conductor: 16 mm², material: copper, air-termination: none, data-cable: arrester, lightning-protection: no}
                # people: {public: 3 m, workers: 1 m}   # how near anybody comes to the antenna, and somebody at work while it sends

        # Stations of others. Say what you know, and how well.
        neighbours:
          hilltop:
            name: Hilltop
            position: 46.4403, -18.6503 ± 50 m
            height: 6 ± 2 m
            gain: 0…6 dBi
            power: 14 dBm

        # Without this, every pair with at least one of your sites is judged.
        # links:
        #   - home ~ hilltop

        """;
}
