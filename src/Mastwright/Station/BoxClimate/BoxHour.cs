namespace Mastwright.Station.BoxClimate;

/// <summary>One hour of weather around a box.</summary>
/// <param name="OutsideCelsius">Temperature of the air in °C.</param>
/// <param name="Humidity">Relative humidity as a share.</param>
/// <param name="DirectNormal">Direct light square to its beam, in W/m².</param>
/// <param name="DiffuseHorizontal">Diffuse light on the level, in W/m².</param>
/// <param name="GlobalHorizontal">All light on the level, in W/m².</param>
/// <param name="WindMetresPerSecond">Wind in m/s, 10 m above open ground.</param>
/// <param name="Sky">Radiation of the sky on the level in W/m²; null for a clear sky.</param>
public readonly record struct BoxHour(
    double OutsideCelsius, double Humidity, double DirectNormal, double DiffuseHorizontal, double GlobalHorizontal, double WindMetresPerSecond, double? Sky);
