using Mastwright.Findings;

namespace Mastwright.Station.Radio;

/// <summary>Somebody's transmitter close to the station.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="FrequencyHz">Its frequency in hertz, greater than zero.</param>
/// <param name="EirpDbm">Its radiated power towards the station, EIRP in dBm.</param>
/// <param name="DistanceMetres">Its distance from the antenna in metres, greater than zero.</param>
public sealed record NearbyEmitter(string PlanPath, double FrequencyHz, double EirpDbm, double DistanceMetres);

/// <summary>What a nearby transmitter does to the receiver.</summary>
/// <param name="Finding">The judgement.</param>
/// <param name="Ledger">Its level at the receiver's input, in dBm; null when the antenna's gain or the feed is unknown.</param>
public sealed record NearbyTransmitterResult(Finding Finding, Ledger? Ledger);
