namespace Mastwright.Station.Rules;

/// <summary>How a row of law lets a station onto the air.</summary>
public enum RuleAccess
{
    /// <summary>Any modulation inside the band.</summary>
    Any,

    /// <summary>Frequency hopping.</summary>
    Hopping,

    /// <summary>Digital modulation of a least bandwidth.</summary>
    Digital,

    /// <summary>Hopping and digital modulation together.</summary>
    Hybrid,

    /// <summary>Nobody of this kind: the band is kept for others.</summary>
    Refused,
}

/// <summary>What a power limit is measured against.</summary>
public enum PowerReference
{
    /// <summary>Power at the antenna's port, in dBm.</summary>
    Conducted,

    /// <summary>Effective radiated power: relative to a half-wave dipole.</summary>
    Erp,

    /// <summary>Equivalent isotropically radiated power.</summary>
    Eirp,
}
