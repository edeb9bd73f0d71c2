namespace Mastwright.Propagation;

/// <summary>What ITU-R P.1812 finds on one path: every intermediate, in the units of its published results.</summary>
/// <remarks>Equation numbers are those of the published results. The default value has no meaning.</remarks>
public readonly record struct P1812Result
{
    /// <summary>d: Length of the path, in km.</summary>
    public double DKm { get; init; }

    /// <summary>dlt: Distance from the transmitter to its horizon, in km (for a clear path: to the point nearest the ray); equation (78).</summary>
    public double DltKm { get; init; }

    /// <summary>dlr: Distance from the receiver to its horizon, in km; equation (81a).</summary>
    public double DlrKm { get; init; }

    /// <summary>th_t: Elevation angle of the transmitter's horizon, in mrad; of the receiver when the path is clear; equations (76) to (78).</summary>
    public double ThetaTMrad { get; init; }

    /// <summary>th_r: Elevation angle of the receiver's horizon, in mrad; of the transmitter when the path is clear; equations (79) to (81).</summary>
    public double ThetaRMrad { get; init; }

    /// <summary>th: Angular distance of the path, in mrad; equation (82).</summary>
    public double ThetaMrad { get; init; }

    /// <summary>hts: Height of the transmitting antenna above sea level, in metres (table 5).</summary>
    public double HtsMetres { get; init; }

    /// <summary>hrs: Height of the receiving antenna above sea level, in metres (table 5).</summary>
    public double HrsMetres { get; init; }

    /// <summary>w: Share ω of the path over sea, 0 to 1 (table 5).</summary>
    public double SeaFraction { get; init; }

    /// <summary>dtm: Longest continuous stretch of land, coast and inland, in km (section 3.6).</summary>
    public double DtmKm { get; init; }

    /// <summary>dlm: Longest continuous stretch of inland, in km (section 3.6).</summary>
    public double DlmKm { get; init; }

    /// <summary>phi: Latitude of the middle of the path, in degrees; equation (4).</summary>
    public double PhiDegrees { get; init; }

    /// <summary>b0: Share β0 of the time with ducting at the middle of the path, in percent; equation (5).</summary>
    public double Beta0Percent { get; init; }

    /// <summary>ae: Median effective radius of the Earth, in km; equation (7a).</summary>
    public double AeKm { get; init; }

    /// <summary>hst_n: Height of the smooth surface at the transmitter above sea level before any limit, in metres; equation (85).</summary>
    public double SmoothHstMetres { get; init; }

    /// <summary>hsr_n: Height of the smooth surface at the receiver above sea level before any limit, in metres; equation (86).</summary>
    public double SmoothHsrMetres { get; init; }

    /// <summary>hst: Height of the smooth surface at the transmitter, not above the ground, in metres; equation (90a).</summary>
    public double HstMetres { get; init; }

    /// <summary>hsr: Height of the smooth surface at the receiver, not above the ground, in metres; equation (90b).</summary>
    public double HsrMetres { get; init; }

    /// <summary>hstd: Height of the smooth surface at the transmitter for the diffraction model, in metres; equation (89).</summary>
    public double HstdMetres { get; init; }

    /// <summary>hsrd: Height of the smooth surface at the receiver for the diffraction model, in metres; equation (89).</summary>
    public double HsrdMetres { get; init; }

    /// <summary>htc: Height of the transmitting antenna above that surface, in metres; equation (37a).</summary>
    public double HtcMetres { get; init; }

    /// <summary>hrc: Height of the receiving antenna above that surface, in metres; equation (37b).</summary>
    public double HrcMetres { get; init; }

    /// <summary>hte: Effective height of the transmitting antenna for the ducting model, in metres; equation (92a).</summary>
    public double HteMetres { get; init; }

    /// <summary>hre: Effective height of the receiving antenna for the ducting model, in metres; equation (92b).</summary>
    public double HreMetres { get; init; }

    /// <summary>hm: Roughness of the ground between the horizons, in metres; equation (93).</summary>
    public double HmMetres { get; init; }

    /// <summary>Fi: Weight of the time percentage between the median and β0, 0 to 1; equation (40).</summary>
    public double Fi { get; init; }

    /// <summary>Fj: Weight of the angular distance, 0 to 1; equation (57).</summary>
    public double Fj { get; init; }

    /// <summary>Fk: Weight of the path length, 0 to 1; equation (58).</summary>
    public double Fk { get; init; }

    /// <summary>Lbfs: Free-space loss, in dB; equation (8).</summary>
    public double LbfsDb { get; init; }

    /// <summary>Lb0p: Loss of a clear path not exceeded for p percent of the time, in dB; equation (10).</summary>
    public double Lb0pDb { get; init; }

    /// <summary>Lb0b: Loss of a clear path not exceeded for β0 percent of the time, in dB; equation (11).</summary>
    public double Lb0bDb { get; init; }

    /// <summary>Lbulla: Bullington loss of the actual profile at the radius of ducting time, in dB; the published results print it at this radius; equation (21).</summary>
    public double LbullaDb { get; init; }

    /// <summary>Lbulls: Bullington loss of the smooth profile at the radius of ducting time, in dB; equation (21).</summary>
    public double LbullsDb { get; init; }

    /// <summary>Ldsph: Spherical-Earth loss at the radius of ducting time, in dB; equation (27).</summary>
    public double LdsphDb { get; init; }

    /// <summary>Lbulla50: Bullington loss of the actual profile at the median radius, in dB; equation (21).</summary>
    public double Lbulla50Db { get; init; }

    /// <summary>Lbulls50: Bullington loss of the smooth profile at the median radius, in dB; equation (21).</summary>
    public double Lbulls50Db { get; init; }

    /// <summary>Ldsph50: Spherical-Earth loss at the median radius, in dB; equation (27).</summary>
    public double Ldsph50Db { get; init; }

    /// <summary>Ld50: Median diffraction loss, in dB; equation (39).</summary>
    public double Ld50Db { get; init; }

    /// <summary>Ldb: Diffraction loss not exceeded for β0 percent of the time, in dB; equation (39).</summary>
    public double LdbDb { get; init; }

    /// <summary>Ldp: Diffraction loss not exceeded for p percent of the time, in dB; equation (41).</summary>
    public double LdpDb { get; init; }

    /// <summary>Lbd50: Median loss with diffraction, in dB; equation (42).</summary>
    public double Lbd50Db { get; init; }

    /// <summary>Lbd: Loss with diffraction not exceeded for p percent of the time, in dB; equation (43).</summary>
    public double LbdDb { get; init; }

    /// <summary>Lminb0p: Notional least loss of a clear or over-sea path with diffraction, in dB; equation (59).</summary>
    public double Lminb0pDb { get; init; }

    /// <summary>Lba: Loss by ducting and layer reflection, in dB; equation (46).</summary>
    public double LbaDb { get; init; }

    /// <summary>Lminbap: Notional least loss of a clear and ducting path, in dB; equation (60).</summary>
    public double LminbapDb { get; init; }

    /// <summary>Lbda: Loss with diffraction, clear-path and ducting enhancements, in dB; equation (61).</summary>
    public double LbdaDb { get; init; }

    /// <summary>Lbam: The same, modified for the angular distance, in dB; equation (62).</summary>
    public double LbamDb { get; init; }

    /// <summary>Lbs: Loss by tropospheric scatter, in dB; equation (44).</summary>
    public double LbsDb { get; init; }

    /// <summary>Lbc: Basic transmission loss not exceeded for p percent of the time at half of the places, in dB; equation (63).</summary>
    public double LbcDb { get; init; }

    /// <summary>Lloc: What the share of places adds, in dB; zero for a receiver at sea (from memory); section 4.7.</summary>
    public double LlocDb { get; init; }

    /// <summary>Lb: Basic transmission loss not exceeded for p percent of the time at pL percent of the places, in dB; equation (69).</summary>
    public double LbDb { get; init; }

    /// <summary>Ep: Field strength for 1 kW effective radiated power, in dB(µV/m); equation (70).</summary>
    public double EpDbMicrovoltPerMetre { get; init; }

    /// <summary>dct: Distance over land from the transmitter to the sea that was used, in km.</summary>
    public double DctKm { get; init; }

    /// <summary>dcr: Distance over land from the receiver to the sea that was used, in km.</summary>
    public double DcrKm { get; init; }

    /// <summary>b: Share β of the time with ducting after the path's correction, in percent; equation (54).</summary>
    public double BetaPercent { get; init; }

    /// <summary>Whether the bare ground leaves the line between the antennas clear at the median radius.</summary>
    public bool IsLineOfSight { get; init; }

    /// <summary>The values by the names of the published result files, without units.</summary>
    /// <remarks>
    /// Those files use four names twice: hst, hsr, htc and hrc. Here they have the later meaning, equations (90a), (90b), (37a), (37b); the
    /// earlier ones are hst_n, hsr_n (85), (86) and hts, hrs. They print the outcome of (61) under the name Lbd too, which differs from
    /// (43) where ducting carries more than diffraction: here Lbd is what they print and Lbd_43 is the equation. Lbulla50, Lbulls50,
    /// Ldsph50, Lloc, dct, dcr and b are ours.
    /// </remarks>
    public IReadOnlyList<(string Name, double Value)> Named() =>
    [
        ("d", DKm),
        ("dlt", DltKm),
        ("dlr", DlrKm),
        ("th_t", ThetaTMrad),
        ("th_r", ThetaRMrad),
        ("th", ThetaMrad),
        ("hts", HtsMetres),
        ("hrs", HrsMetres),
        ("w", SeaFraction),
        ("dtm", DtmKm),
        ("dlm", DlmKm),
        ("phi", PhiDegrees),
        ("b0", Beta0Percent),
        ("ae", AeKm),
        ("hst_n", SmoothHstMetres),
        ("hsr_n", SmoothHsrMetres),
        ("hst", HstMetres),
        ("hsr", HsrMetres),
        ("hstd", HstdMetres),
        ("hsrd", HsrdMetres),
        ("htc", HtcMetres),
        ("hrc", HrcMetres),
        ("hte", HteMetres),
        ("hre", HreMetres),
        ("hm", HmMetres),
        ("Fi", Fi),
        ("Fj", Fj),
        ("Fk", Fk),
        ("Lbfs", LbfsDb),
        ("Lb0p", Lb0pDb),
        ("Lb0b", Lb0bDb),
        ("Lbulla", LbullaDb),
        ("Lbulls", LbullsDb),
        ("Ldsph", LdsphDb),
        ("Lbulla50", Lbulla50Db),
        ("Lbulls50", Lbulls50Db),
        ("Ldsph50", Ldsph50Db),
        ("Ld50", Ld50Db),
        ("Ldb", LdbDb),
        ("Ldp", LdpDb),
        ("Lbd50", Lbd50Db),
        ("Lbd", LbdaDb),
        ("Lbd_43", LbdDb),
        ("Lminb0p", Lminb0pDb),
        ("Lba", LbaDb),
        ("Lminbap", LminbapDb),
        ("Lbda", LbdaDb),
        ("Lbam", LbamDb),
        ("Lbs", LbsDb),
        ("Lbc", LbcDb),
        ("Lloc", LlocDb),
        ("Lb", LbDb),
        ("Ep", EpDbMicrovoltPerMetre),
        ("dct", DctKm),
        ("dcr", DcrKm),
        ("b", BetaPercent),
    ];

    /// <summary>The loss, in the invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"Lb {LbDb:0.00} dB over {DKm:0.###} km");
}
