using Mastwright.Quantities;

namespace Mastwright.Network.Air;

/// <summary>What is on the air at each station, and which packet its receiver is locked on to.</summary>
/// <remarks>
/// A receiver locks on to a packet that it can receive when it is idle and the packet exceeds everything else there by the threshold. It loses
/// it when later packets come too near; within its preamble it turns to one that exceeds all else. A station that sends receives nothing that
/// was on the air meanwhile.
/// </remarks>
internal sealed class AirReceivers(AirNetwork network, AirSettings settings, AirTally tally)
{
    private const int Nothing = -1;

    /// <summary>Power left over by rounding that counts as none, relative to the packet's.</summary>
    private const double Rounding = 1e-9;

    private readonly double capture = Math.Pow(10, settings.CaptureDb / 10);
    private readonly double[] power = new double[network.Count];
    private readonly int[] onAir = new int[network.Count];
    private readonly int[] strongOnAir = new int[network.Count];
    private readonly int[] lockedOn = [.. Enumerable.Repeat(Nothing, network.Count)];
    private readonly double[] lockedPower = new double[network.Count];
    private readonly double[] lockedSince = new double[network.Count];
    private readonly bool[] lockIsLost = new bool[network.Count];
    private readonly bool[] sends = new bool[network.Count];
    private readonly double[] busySince = new double[network.Count];
    private readonly List<double[]> rooms = [];

    /// <summary>Whether a station hears something that it could receive, or sends itself.</summary>
    internal bool IsBusy(int station) => strongOnAir[station] > 0 || sends[station];

    /// <summary>Whether a station sends.</summary>
    internal bool Sends(int station) => sends[station];

    /// <summary>A transmission begins.</summary>
    /// <param name="transmission">Its number.</param>
    /// <param name="station">Who sends it.</param>
    /// <param name="key">What its fading hangs on.</param>
    /// <param name="seconds">When.</param>
    internal void Begin(int transmission, int station, ulong key, double seconds)
    {
        StartBusy(station, seconds);
        sends[station] = true;
        if (lockedOn[station] != Nothing)
        {
            tally.LostToSending++;
            lockedOn[station] = Nothing;
        }

        ReadOnlySpan<int> hearers = network.HearersOf(station);
        ReadOnlySpan<double> margins = network.MarginsOf(station);
        double[] levels = Room(transmission, hearers.Length);
        for (int i = 0; i < hearers.Length; i++)
        {
            double margin = settings.FadingDb > 0 ? margins[i] + (settings.FadingDb * KeyedDraws.Normal(key, hearers[i])) : margins[i];
            levels[i] = Math.Pow(10, margin / 10);
            Arrive(transmission, hearers[i], levels[i], seconds);
        }
    }

    /// <summary>A transmission ends.</summary>
    /// <param name="transmission">Its number.</param>
    /// <param name="station">Who sent it.</param>
    /// <param name="seconds">When.</param>
    /// <param name="received">Filled with who received it and the power relative to what is just received.</param>
    internal void End(int transmission, int station, double seconds, List<(int Station, double Power)> received)
    {
        received.Clear();
        ReadOnlySpan<int> hearers = network.HearersOf(station);
        double[] levels = rooms[transmission];
        for (int i = 0; i < hearers.Length; i++)
        {
            int at = hearers[i];
            power[at] = --onAir[at] == 0 ? 0 : power[at] - levels[i];
            if (lockedOn[at] == transmission)
            {
                lockedOn[at] = Nothing;
                if (lockIsLost[at])
                {
                    tally.LostToOverlap++;
                }
                else
                {
                    tally.Received++;
                    received.Add((at, levels[i]));
                }
            }

            if (levels[i] >= 1)
            {
                strongOnAir[at]--;
                EndBusy(at, seconds);
            }
        }

        sends[station] = false;
        EndBusy(station, seconds);
    }

    /// <summary>The day is over: what is busy now counts until here.</summary>
    internal void Close(double seconds)
    {
        for (int station = 0; station < network.Count; station++)
        {
            if (IsBusy(station))
            {
                tally.BusySeconds[station] += Math.Max(0, seconds - busySince[station]);
            }
        }
    }

    private void Arrive(int transmission, int at, double level, double seconds)
    {
        double others = power[at];
        power[at] += level;
        onAir[at]++;
        bool isStrong = level >= 1;
        if (isStrong)
        {
            tally.Strong++;
            StartBusy(at, seconds);
            strongOnAir[at]++;
        }

        if (sends[at])
        {
            tally.LostToSending += isStrong ? 1 : 0;
            return;
        }

        if (lockedOn[at] != Nothing && !Exceeds(lockedPower[at], power[at] - lockedPower[at]))
        {
            lockIsLost[at] = true;
        }

        bool mayTurn = lockedOn[at] == Nothing || seconds - lockedSince[at] <= settings.PreambleSeconds;
        if (isStrong && mayTurn && Exceeds(level, others))
        {
            tally.LostToOverlap += lockedOn[at] == Nothing ? 0 : 1;
            lockedOn[at] = transmission;
            lockedPower[at] = level;
            lockedSince[at] = seconds;
            lockIsLost[at] = false;
        }
        else if (isStrong)
        {
            tally.LostToOverlap++;
        }
    }

    private bool Exceeds(double level, double others) => others <= Rounding * level || level >= capture * others;

    private void StartBusy(int station, double seconds)
    {
        if (!IsBusy(station))
        {
            busySince[station] = seconds;
        }
    }

    private void EndBusy(int station, double seconds)
    {
        if (!IsBusy(station))
        {
            tally.BusySeconds[station] += seconds - busySince[station];
        }
    }

    private double[] Room(int transmission, int length)
    {
        while (rooms.Count <= transmission)
        {
            rooms.Add([]);
        }

        if (rooms[transmission].Length < length)
        {
            rooms[transmission] = new double[length];
        }

        return rooms[transmission];
    }
}
