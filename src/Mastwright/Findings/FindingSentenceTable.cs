namespace Mastwright.Findings;

/// <summary>Text and advice for each finding code; names in braces are filled from the finding's details.</summary>
internal static class FindingSentenceTable
{
    internal static readonly (string Code, string Text, string Advice)[] Entries =
    [
        ("link-margin", "{says}: {why}.", "{advice}"),
        ("link-range", "Over the ranges that the plan gives, the margin from {from} to {to} lies between {low} and {high} (wanted: {wanted}), so the verdict is open.", "Give a narrower position, height, gain or power at the end that is vague."),
        ("link-unknown", "Whether {from} is heard at {to} is not known, for want of {missing}.", "Give what is missing."),
        ("path-outside-model", "{problem} The figure is by {method}.", "Take it as a rough guess, and measure."),
        ("antenna-under-ground", "The antenna of {name} would be under the ground.", "Check its height, what it is measured from, and the ground height."),
        ("ground-height-differs", "The plan puts the ground at {name} at {given}; the height source has {source} there.", "Check the position first, then the ground height and its datum."),
        ("antenna-datum-differs", "The antenna height at {name} is above {given}, the ground heights are above {source}; the two are some metres apart, at some places tens.", "Give the height above the ground, or convert it to the ground's datum."),
        ("ground-datums-mixed", "Heights are given above more than one datum ({datums}); the two may be some metres apart, at some places tens.", "Use sources and antenna heights of one datum, or check how far apart they are where you are."),
        ("ground-datum-unknown", "Nobody says above which datum the heights of '{source}' are.", "Give its datum in the plan, such as EGM96; its publisher says which."),
        ("ground-kind-unknown", "Nobody says whether the heights of '{source}' are of the bare earth or of the surface with trees and roofs; they are taken as bare earth.", "Give its kind in the plan: bare-earth or surface."),
        ("path-without-cover", "No cover is known on the path between {from} and {to}: in a town or wood such predictions were some 10 to 12 dB uncertain and some 19 dB too good.", "Give a cover file, the surroundings of the low end, or a larger spread/model-error such as 11 dB."),
        ("terminal-clutter-over-surface", "Clutter around the antenna was asked for but not added: {why}.", "Leave it out, or use a bare-earth height source."),
        ("terminal-clutter-range", "Clutter around the antenna was asked for but not added: {why}.", "Leave it out, and use the cover of the ground."),
        ("woodland-range", "Woodland was asked for but not added: {why}.", "Leave it out, and measure."),
        ("conducted-power-unknown", "The power of the radio is not known ({missing}), so nothing can be said of who hears it.", "Give the power at the radio's connector, such as 14 dBm."),
        ("demodulation-limit-unknown", "There is no demodulation limit for this modem setting.", "Give it at {missing}, or choose a spreading factor that the catalogue has."),
        ("external-noise-unknown", "Noise from outside is not known; none is counted ({missing}).", "Measure the noise floor on site and give it at the radio's noise-floor, or give air/external-noise."),
        ("modem-bandwidth-unusual", "No modem of the catalogue can be set to a bandwidth of {bandwidth}; it has {known}.", "Check the bandwidth against what the radio is really set to."),
        ("frequency-error", "The two ends may be {offset} apart in frequency; the modem bears {tolerance}, and {packet-drift} of drift within one packet.{missing}", "Use radios with temperature-compensated oscillators, or a wider bandwidth."),
        ("nearby-transmitter-blocking", "The transmitter may reach {level} at the receiver's input, which bears {limit}{near}{filter}.", "Measure with the antenna connected, fit a band-pass filter, or move the antenna.{doubt}"),
        ("feed-loss", "The feed loses {loss}: {share} of the power gets through.", "Keep it under {limit}: a shorter or thicker line, or the radio in a box at the antenna."),
        ("line-type-unknown", "The catalogue has no line type '{type}'.{near}", "Use one of {known}, or give the plan a catalogue file with a row for it."),
        ("line-table-inconsistent", "The published points of '{type}' lie off any line's curve, the worst by {miss}.", "Look for a misprint in the row, such as dB per 100 ft among dB per 100 m."),
        ("part-loss-unknown", "The insertion loss of '{part}' is not known.", "Give its loss in dB."),
        ("amplifier-noise-unknown", "The noise figure of '{amplifier}' is not known, so the station's own noise is not either.", "Give its noise figure from its data sheet."),
        ("amplifier-limit-unknown", "How much '{amplifier}' can put out is not known; its full gain is counted.", "Give its most output in dBm, and hold it against the radiated power allowed."),
        ("antenna-match", "The antenna's return loss is {return-loss} (VSWR {vswr}), {how}.", "Check antenna, connectors and water in the line; measure again at the antenna itself."),
        ("mismatch-impossible", "A return loss of {reading} at the radio cannot come from an antenna behind {loss} of feed: it would be {least} or more.", "Look for a fault between radio and antenna, or correct the feed in the plan."),
        ("mismatch-behind-amplifier", "A return loss read through an amplifier says nothing of the antenna.", "Measure at the antenna."),
        ("antenna-gain-unknown", "The antenna's gain is not known.", "Give its gain in dBi, with a range if it is vague."),
        ("antenna-gain-for-length", "{gain} is claimed for an antenna {length} long, which can have about {limit}.", "Doubt the claim: give the gain as a range, or the length of the radiating part if this is not it."),
        ("antenna-side-mount", "The antenna hangs {distance} from its mast; a wavelength is {wavelength}.", "Nearer than a wavelength the mast bends the pattern by several dB: mount it on top, or further out."),
        ("antenna-pattern-incomplete", "The antenna's pattern lacks {missing}; its full gain is used at every angle.", "Give what is missing."),
        ("antenna-bearing-unknown", "A directional antenna has no bearing; its main beam is used in every direction.", "Give its bearing from true north."),
        ("antenna-direction", "At an elevation of {elevation} the antenna is {drop} below its main beam ({form}).{null}", "Tilt it, choose one with a wider beam, or give its pattern."),
        ("polarisation-differs", "One end is polarised {one}, the other {other}: {loss} are lost.", "Turn one of the antennas."),
        ("ground-missing", "There is no ground file for {tile}, from {from} to {to} along the path.", "Add the tile, or a tile index if only sea lies there; 'ground fetch' downloads public ones."),
        ("ground-void", "{tile} knows no height from {from} to {to} along the path, and no other source fills it.", "Add a second, coarser height source."),
        ("ground-file-unusable", "{file} cannot be used: {found}.", "{right}."),
    ];
}
