using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Network.Air;
using Mastwright.Station.Radio;

namespace Mastwright.Plans;

/// <content>What a simulation of the channel takes from the plan.</content>
public sealed partial class Assessment
{
    /// <summary>What each station sends, by its <c>traffic</c> or the plan's, at a fixed interval; a report an hour where neither says.</summary>
    /// <param name="stations">The stations.</param>
    public (ImmutableArray<AirTraffic> Traffic, ImmutableArray<Assumption> Assumptions) AirTrafficOf(ImmutableArray<LinkStation> stations)
    {
        ImmutableArray<Assumption>.Builder assumptions = ImmutableArray.CreateBuilder<Assumption>();
        ImmutableArray<AirTraffic>.Builder traffic = ImmutableArray.CreateBuilder<AirTraffic>();
        foreach (LinkStation station in stations)
        {
            double? own = (station.Traffic ?? plan.Traffic).OwnMean;
            if (own is null)
            {
                assumptions.Add(new("air-traffic", "a report an hour of each station whose traffic nobody gives", "common practice", "traffic/own"));
            }

            traffic.Add(new(own ?? 1, 0));
        }

        return (traffic.ToImmutable(), [.. assumptions.Distinct()]);
    }

    /// <summary>The settings of a simulation: time on air of the plan's packet, fading, capture, and the least lawful share of time of the plan's own sites.</summary>
    /// <param name="stations">The stations.</param>
    public (AirSettings Settings, ImmutableArray<Assumption> Assumptions) AirSettingsOf(ImmutableArray<LinkStation> stations)
    {
        AirtimeResult airtime = Airtime.Compute(plan.Modem);
        bool chirps = plan.Modem.Modulation == Modulation.ChirpSpreadSpectrum;
        int factor = Math.Clamp(plan.Modem.SpreadingFactor, CaptureThresholds.LeastFactor, CaptureThresholds.MostFactor);

        // Frequency-shift keying: the usual co-channel rejection of such receivers.
        const double KeyedCaptureDb = 10;
        double capture = chirps ? CaptureThresholds.Db(factor, factor) : KeyedCaptureDb;
        double? allowed = stations.Where(station => station.IsSite)
            .Select(station => RadioLaw.Rules(station, plan, StationChains.Of(station, plan, catalogue), catalogue, StationBox.CelsiusOf(station, StationBox.Of(station, plan, catalogue).Box)) is { Judgements: [{ AllowedPercent: { } percent }, ..] } ? percent : (double?)null)
            .Min();
        return (
            plan.Relaying.In(new()
            {
                AirtimeSeconds = airtime.TotalSeconds,
                PreambleSeconds = airtime.PreambleSeconds,
                FadingDb = settings.Wanted.FadingDb,
                CaptureDb = capture,
                DutyShare = (allowed ?? 100) / 100,
            }),
            [
                new(
                    "air-capture",
                    string.Create(CultureInfo.InvariantCulture, $"a packet is received from {capture:0.#} dB above all others on the air"),
                    chirps ? "Goursaud and Gorce, EAI Endorsed Transactions on IoT 1, 2015" : "common practice"),
                allowed is { } share
                    ? new("air-duty", string.Create(CultureInfo.InvariantCulture, $"every station sends {share:0.###} % of any hour at the most"), "the least that the plan's own sites may, by the rules of its region", "region")
                    : new("air-duty", "no lawful limit of the time on the air", "no row of the plan's region gives one", "region"),
                .. plan.Relaying.HopLimit is null ? [HopExamination.LimitAssumed("relaying/hop-limit")] : ImmutableArray<Assumption>.Empty,
                .. plan.Relaying is { Delay: null, MostDelaySeconds: null }
                    ? [new("air-delay", "every station passes on, after a random wait of up to 2 s", "common practice", "relaying/delay")]
                    : ImmutableArray<Assumption>.Empty,
            ]);
    }
}
