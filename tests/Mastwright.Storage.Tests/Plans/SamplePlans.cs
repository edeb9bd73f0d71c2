namespace Mastwright.Storage.Tests.Plans;

/// <summary>Invented plans for the tests.</summary>
internal static class SamplePlans
{
    internal const string Modem = "modem: {frequency: 869.525 MHz, bandwidth: 125 kHz, spreading-factor: 10, payload: 40 B}\n";

    internal const string Smallest = "mastwright: 1\nname: Skerrin\n" + Modem;

    internal const string Whole = """
        mastwright: 1   # the format
        name: Skerrin
        region: EU
        catalogue: own/lines.yaml
        ground:
          heights:
            - files: ground/*.hgt
              kind: bare-earth
              datum: EGM96
              tile-index: ground/tiles.txt
            - name: Surface
              files: [a.tif, b.tif]
              kind: surface
          cover:
            - files: ground/cover/*.tif
        air: {refractivity-gradient: 45, surface-refractivity: 325, maps: own/itu, low-k: 0.8, external-noise: 3 dB, noise-environment: quiet-rural}
        modem:
          frequency: 869.525 MHz
          bandwidth: 125 kHz
          spreading-factor: 10
          coding-rate: 4/6
          preamble: 16
          payload: 40 B
          header: no
          checksum: false
          occupied-bandwidth: 118 kHz
          six-decibel-bandwidth: 100 kHz
          polite-access: no
          hopping: {channels: 8, lowest: 869.425 MHz, highest: 869.625 MHz, dwell: 0.4 s, within-packet: yes}
        traffic: {own: 4, own-worst-hour: 12, relayed: 20, relayed-worst-hour: 80}
        relaying: {hop-limit: 4, delay: by-level, least-delay: 0.2 s, most-delay: 3 s, cancel-after: 2, share: 80 %, listen-first: yes, back-off: 500 ms}
        wind: {speed: 26 m/s, averaging: ten-minute-mean, return-period: 50 years, level: characteristic, form: en-1991-1-4, terrain: II, exposure: C, gust-factor: 1.4, ultimate-factor: 1.3, design-return-period: 100 years, orography: 1.1, direction-factor: 0.9, season-factor: 1, air-density: 1.2, topographic-factor: 1.2, directionality: 0.95, elevation-factor: 1, structural-factor: 1.1, load-factor: 1.4, ice: R3, ice-density: 600, ice-wind-share: 60 %}
        wanted: {margin: 12 dB, time: 10 %, location: 90 %}
        spread:
          model-error: 8 dB
          location: 5 dB
          fading: 3 dB
        corrections:
          summer-2026:
            source: 42 links of 6 stations
            offset: -3.2 ± 1.5 dB
            cover-height: 12 ± 4 m
            station-height: 10 ± 5 m
            spread: 7.9 dB
            applies-to: [ferry-house]
            stations:
              ferry-house: {offset: 1.2 ± 0.6 dB, spread: 7.1 dB}
        correction: summer-2026
        sites:
          ferry-house:
            name: 'Ferry House'
            formerly: old-ferry
            addresses: [a1b2c3, d4e5f6 2026-06-01..2026-07-15]
            position: 46.4012, -18.7421 ± 5 m
            ground-height: 4 ± 1 m
            traffic: {own: 2, relayed: 100}
            in-use: net-loft
            wind: {terrain: III}
            climate: {light: [1, 2, 3, 4, 5, 6, 6, 5, 4, 3, 2, 1], temperature: [8, 8, 9, 10, 12, 15, 17, 17, 16, 13, 11, 9]}
            hazards: {overhead-line-distance: 22 ± 2 m, local-clearance: 6 m, handling-length: 1.5 m, access: ladder, working-height: 7 m, fall-zone: public-way, consents: {owner: granted, planning: asked, airfield: not-needed}}
            surroundings: {clutter: suburban, clutter-height: 8 m, street-width: 20 m, woodland-depth: 120 m, building: traditional}
            fit-outs:
              net-loft:
                name: Net loft
                antenna: {part: collinear-8, height: 5 m, above: roof, roof: 6 m, mast-distance: 0.4 m, total-length: 1.8 m, diameter: 25 mm, wind-area: 0.05 m², drag-coefficient: 1.2, mass: 900 g}
                feed:
                  - line: rg-213
                    length: 2 m
                    temperature: 40 °C
                  - connectors: 2
                    loss: 0.1 dB
                  - adapters: 1
                  - surge-arrester: 0.3 dB
                    name: at the bulkhead
                  - filter:
                  - splitter: 3.5 dB
                  - amplifier: {name: Mast-head, receive-gain: 15 dB, noise-figure: 1 dB, transmit-gain: 10 dB, transmit-maximum: 27 dBm, bypass-loss: 0.8 dB}
                  - part: loft-run
                return-loss: 18 dB at radio
                radio: {part: small-node, power: 10 dBm}
                people: {public: 6 m, workers: 1 m}
                solar: {panel: 20 W, tilt: 60°, azimuth: 180°, losses: 12 %, ground-reflects: 20 %, controller-efficiency: 90 %, covered-days: 3, battery-rise: 4 K, hours-without: 12 h, days-without-sun: 6 d, horizon: [0, 5, 10, 2]}
                supply:
                  - power-over-cable: class-3
                    voltage: 53 V
                    power: 15.4 W
                    efficiency: 80 %
                    name: in the office
                  - surge-arrester: 0.5 ohm
                  - data-cable: cat-5e
                    length: 24 ± 1 m
                    pairs: 2
                    temperature: 40 °C
                  - converter: 5 V
                    kind: isolated
                    rating: 12 W
                    efficiency: 82 %
                    input: 37…57 V
                  - branches:
                      board:
                        - dc-cable: flexible-1-5
                          length: 1 m
                        - dc-cable:
                          gauge: 18
                          length: 1 m
                        - data-cable:
                          section: 0.25 mm²
                          metal: copper
                          strands: stranded
                          carries: 0.5 A
                          cable-pairs: 2
                          length: 1 m
                        - board: small-board
                          idle: 1.1 ± 0.2 W
                          busy: 2.4 W
                          busy-share: 15 %
                          boot: 4 W
                          sleep: 100 mW
                          sleep-share: 10 %
                      radio:
                        - battery: li-ion
                          series: 1
                          parallel: 2
                          capacity: 3350 mAh
                          age: 0…4 years
                          charge: 90…100 %
                          cut-off: 3.2 V
                          charger: 0.5 A
                          charger-efficiency: 85 %
                          stops-charge-in-cold: yes
                          hold: 24 h
                          temperature: 12 (-4…38) °C
                        - fuse: 1 A
                        - branches:
                            node: [{part: node-load}]
                            spare: [{radio: , receive: 50 mW, transmit: 0.2 W}]
                box: {temperature: 10 (-10…40) °C, width: 200 mm, height: 300 mm, depth: 120 mm, material: plastic, colour: light-grey, mounting: free, sun: open, seal: vent-plug, outside: 12 (-8…32) °C, night-humidity: 98 %, heat: 1.5…2.5 W, heater: 1 W, exposure: sea, ip: IP66/IP67, entries: side, drip-loops: yes, connectors: down, parts: {board: {name: Small board, temperature: -20…70 °C, rise: 8 K}, gland: {ip: ip66}}}
                mast:
                  tubes:
                    - {size: steel-60.3x3.2, grade: s235, length: 2.4 m, welded: no}
                    - {outer-diameter: 48.3 mm, wall: 3.2 mm, grade: s235, length: 1.8 m}
                  bracket: {height: 7 m, spacing: 0.8 m, capacity: 2.5 kN, fixed-to: masonry}
                  clamp: stainless-steel
                  box: {width: 200 mm, height: 300 mm, above-bracket: 3 m, mass: 2.6 kg, drag-coefficient: 2}
                  cable: {diameter: 7 mm, length: 3 m, mass-per-metre: 60 g/m}
                  guys: {height: 3 m, angle: 45°, diameter: 4 mm, length: 4.5 m, breaking-force: 9 kN, anchor-capacity: 4 kN, count: 4}
                  material-factor: 1.1
                hazards: {fall-zone: own-ground}
                earthing: {class: III, air-termination: rod, rod-height: 14 m, rod-distance: 3 m, conductor: 16 mm2, material: copper, below-roof-edge: 0.5 m, from-wall: 0.4 m, soil-resistivity: 100…400 Ω·m, soil: humus, rods: {count: 2, length: 1.5 m, diameter: 16 mm, spacing: 3 m}, lightning-protection: yes, separation: 0.5 m, separation-length: 9 m, down-conductors: 2, through-solid: no, data-cable: arrester}
                nearby-transmitters:
                  tower: {frequency: 791 MHz, eirp: 62 ± 3 dBm, distance: 300…500 m}
              eaves:
                antenna:
                  gain: 0…2 dBi
                  height: 12 m
                  above: sea-level
                  datum: EGM96
                  polarisation: horizontal
                  pattern: yagi
                  elevation-beamwidth: 40°
                  azimuth-beamwidth: 60°
                  bearing: 240°
                  tilt: -2°
                  indoors: yes
                vswr: 1.5 at antenna
                supply: [{mains-adapter: 5 V, power: 10 W}, {part: node-load}]
              hut:
                antenna: {gain: 2 dBi, height: 3 m}
                supply: [{injector: 24 V}, {board: , idle: 1 W, busy: 2 W}]
          creamery:
            position: "46.45, -18.60"
        neighbours:
          east-quay: {name: East Quay, own: yes, position: "46.3871, -18.4410 ± 50 m", height: 6 ± 2 m, gain: 0…6 dBi, power: 20 dBm, noise-figure: 6 dB, polarisation: horizontal, sends-every: 15 min}
        links:
          - ferry-house ~ creamery
          - creamery ~ east-quay
        parts:
          antennas:
            collinear-8: {name: Collinear, gain: 8 dBi, pattern: collinear-array, elements: 5, spacing: 0.8 wavelengths, null-fill: 20 dB, length: 1.6 m}
          radios:
            small-node: {name: Node, power: 14 dBm, noise-figure: 6 dB, noise-floor: -112 dBm, snr-limits: {7: -7.5 dB, 10: -15 dB}, frequency-error: 10 ppm, frequency-drift: 5 ppm, drift-temperatures: -30…85 °C, blocking: -30 dBm, blocking-offset: 10 MHz, approved-gain: 8 dBi, approved-antenna: yes, approved-amplifier: no}
          feed:
            loft-run: {line: foam-10mm, length: 12 ± 1 m}
          supply:
            node-load: {radio: chirp-node, transmit-share: 1 %}
        """;
}
