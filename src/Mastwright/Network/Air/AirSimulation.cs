using Mastwright.Quantities;

namespace Mastwright.Network.Air;

/// <summary>Simulates a shared channel event by event: the same in, the same out.</summary>
/// <remarks>
/// Made packets are flooded: a station that receives one for the first time passes it on once, if its hops allow and its rule says so.
/// Every draw is keyed by the seed and by what it belongs to. One thread; many simulations may run side by side.
/// </remarks>
public sealed class AirSimulation
{
    /// <summary>How often the work asks whether it is to stop.</summary>
    private const int EventsAnAsking = 4096;

    private const int NeverTries = -1;

    private readonly AirNetwork network;
    private readonly AirSettings settings;
    private readonly AirTally tally;
    private readonly AirReceivers receivers;
    private readonly AirEvents events = new();
    private readonly Sender[] senders;
    private readonly List<Flood> floods = [];
    private readonly Stack<int> freeFloods = [];
    private readonly List<(int Station, int Flood, int Hop)> transmissions = [];
    private readonly Stack<int> freeTransmissions = [];
    private readonly List<(int Station, double Power)> received = [];

    private AirSimulation(AirNetwork network, AirSettings settings)
    {
        this.network = network;
        this.settings = settings;
        tally = new(network.Count, settings.HopLimit);
        receivers = new(network, settings, tally);
        senders = [.. Enumerable.Range(0, network.Count).Select(station => new Sender(KeyedDraws.Within(settings.Seed, (ulong)station)))];
    }

    /// <summary>Runs a simulation to its end.</summary>
    /// <param name="network">The stations.</param>
    /// <param name="settings">What it is run with.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static AirResult Run(AirNetwork network, AirSettings settings, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentNullException.ThrowIfNull(settings);
        AirSimulation simulation = new(network, settings);
        simulation.Run(cancellation);
        return simulation.tally.Result(network, settings);
    }

    private void Run(CancellationToken cancellation)
    {
        for (int station = 0; station < network.Count; station++)
        {
            AirTraffic traffic = network.Traffic[station];
            if (traffic.ReportsAnHour > 0)
            {
                events.Add(3600 / traffic.ReportsAnHour * KeyedDraws.Uniform(senders[station].Key, 0), new(AirEventKind.Report, station, 0));
            }

            if (traffic.MessagesAnHour > 0)
            {
                events.Add(Interval(station), new(AirEventKind.Message, station, 0));
            }
        }

        while (events.TryNext(out AirEvent what, out double now) && now < settings.DurationSeconds)
        {
            if (tally.Events++ % EventsAnAsking == 0)
            {
                cancellation.ThrowIfCancellationRequested();
            }

            Happen(what, now);
        }

        receivers.Close(settings.DurationSeconds);
    }

    private void Happen(AirEvent what, double now)
    {
        switch (what.Kind)
        {
            case AirEventKind.End:
                End(what.Item, now);
                break;
            case AirEventKind.Report:
                events.Add(now + (3600 / network.Traffic[what.Station].ReportsAnHour), what);
                Make(what.Station, now);
                break;
            case AirEventKind.Message:
                events.Add(now + Interval(what.Station), what);
                Make(what.Station, now);
                break;
            case AirEventKind.Relay:
                Enqueue(what.Station, what.Item, floods[what.Item].HopOf(what.Station), now);
                break;
            default:
                senders[what.Station].TriesAt = NeverTries;
                Try(what.Station, now);
                break;
        }
    }

    private double Interval(int station) =>
        -Math.Log(KeyedDraws.Uniform(senders[station].Key, ++senders[station].Drawn)) * 3600 / network.Traffic[station].MessagesAnHour;

    private void Make(int station, double now)
    {
        int number = freeFloods.TryPop(out int free) ? free : floods.Count;
        if (number == floods.Count)
        {
            floods.Add(new(network.Count));
        }

        floods[number].Begin(station, KeyedDraws.Within(senders[station].Key, (ulong)tally.Made[station]++), now);
        Enqueue(station, number, 0, now);
    }

    private void Enqueue(int station, int flood, int hop, double now)
    {
        if (senders[station].Waiting.Count >= settings.QueueLimit)
        {
            tally.Dropped[station]++;
            Leave(flood);
            return;
        }

        senders[station].Waiting.Enqueue((flood, hop));
        if (senders[station].TriesAt < 0)
        {
            Try(station, now);
        }
    }

    /// <summary>Sends what waits, or says when to try again.</summary>
    private void Try(int station, double now)
    {
        Sender sender = senders[station];
        while (sender.Waiting.TryPeek(out (int Flood, int Hop) next) && floods[next.Flood].IsCancelled(station, settings.CancelAfterCopies))
        {
            sender.Waiting.Dequeue();
            tally.Cancelled[station]++;
            Leave(next.Flood);
        }

        if (sender.Waiting.Count == 0 || receivers.Sends(station))
        {
            return;
        }

        if (settings.DutyShare < 1 && sender.FreeAt(now, settings) is var free && free > now)
        {
            tally.Stalled[station]++;
            tally.StalledSeconds[station] += Math.Min(free, settings.DurationSeconds) - now;
            TryAt(station, free);
            return;
        }

        // A hair's breadth after its beginning a slot still counts as just begun.
        if (settings.SlotSeconds > 0 && Math.Ceiling((now / settings.SlotSeconds) - 1e-9) * settings.SlotSeconds is var slot && slot > now)
        {
            TryAt(station, slot);
            return;
        }

        if (settings.ListensFirst && receivers.IsBusy(station))
        {
            tally.Deferred[station]++;
            TryAt(station, now + (settings.BackOffSeconds * KeyedDraws.Uniform(sender.Key ^ 1, ++sender.Drawn)));
            return;
        }

        Begin(station, sender, now);
    }

    private void TryAt(int station, double seconds)
    {
        senders[station].TriesAt = seconds;
        events.Add(seconds, new(AirEventKind.Try, station, 0));
    }

    private void Begin(int station, Sender sender, double now)
    {
        (int flood, int hop) = sender.Waiting.Dequeue();
        int number = freeTransmissions.TryPop(out int free) ? free : transmissions.Count;
        if (number == transmissions.Count)
        {
            transmissions.Add(default);
        }

        transmissions[number] = (station, flood, hop);
        tally.Sent[station]++;
        tally.AirSeconds[station] += Math.Min(settings.AirtimeSeconds, settings.DurationSeconds - now);
        sender.Note(now, settings);
        receivers.Begin(number, station, KeyedDraws.Within(floods[flood].Key, (ulong)station), now);
        events.Add(now + settings.AirtimeSeconds, new(AirEventKind.End, station, number));
    }

    private void End(int transmission, double now)
    {
        (int station, int flood, int hop) = transmissions[transmission];
        receivers.End(transmission, station, now, received);
        freeTransmissions.Push(transmission);
        foreach ((int at, double power) in received)
        {
            Receive(at, flood, hop + 1, power, now);
        }

        Leave(flood);
        Try(station, now);
    }

    private void Receive(int station, int number, int hop, double power, double now)
    {
        Flood flood = floods[number];
        if (!flood.Hear(station, hop))
        {
            return;
        }

        tally.Deliver(flood.Origin, station, hop, now - flood.MadeAt);
        ulong key = KeyedDraws.Within(flood.Key, (ulong)station);
        if (hop < settings.HopLimit && (settings.RelayProbability >= 1 || KeyedDraws.Uniform(key, -2) < settings.RelayProbability))
        {
            flood.Users++;
            events.Add(now + Delay(power, key), new(AirEventKind.Relay, station, number));
        }
    }

    private double Delay(double power, ulong key)
    {
        // Levels from what is just received to 40 dB above it take up the span. Our choice.
        const double SpanDb = 40;
        double span = settings.MostDelaySeconds - settings.LeastDelaySeconds;
        double drawn = KeyedDraws.Uniform(key, -3);
        return settings.Delay switch
        {
            RelayDelay.Fixed => settings.MostDelaySeconds,
            RelayDelay.Random => settings.LeastDelaySeconds + (span * drawn),
            _ => settings.LeastDelaySeconds + (span * ((0.9 * Math.Clamp(10 * Math.Log10(power) / SpanDb, 0, 1)) + (0.1 * drawn))),
        };
    }

    /// <summary>One use of a flooded packet is over; when all are, its room is free.</summary>
    private void Leave(int flood)
    {
        if (--floods[flood].Users == 0)
        {
            freeFloods.Push(flood);
        }
    }

    /// <summary>A station as a sender.</summary>
    private sealed class Sender(ulong key)
    {
        private readonly Queue<double> begun = [];

        internal ulong Key => key;

        internal Queue<(int Flood, int Hop)> Waiting { get; } = [];

        /// <summary>When it tries to send again; negative when nothing is set.</summary>
        internal double TriesAt { get; set; } = NeverTries;

        internal int Drawn { get; set; }

        /// <summary>From when on another packet keeps the lawful share: no more packets begin within an hour than fill it.</summary>
        internal double FreeAt(double now, AirSettings settings)
        {
            while (begun.TryPeek(out double first) && first <= now - 3600)
            {
                begun.Dequeue();
            }

            int most = (int)Math.Floor((settings.DutyShare * 3600 / settings.AirtimeSeconds) + 1e-9);
            return most == 0 ? double.PositiveInfinity : begun.Count < most ? now : begun.Peek() + 3600;
        }

        internal void Note(double now, AirSettings settings)
        {
            if (settings.DutyShare < 1)
            {
                begun.Enqueue(now);
            }
        }
    }

    /// <summary>A packet on its way through the network.</summary>
    private sealed class Flood(int stations)
    {
        /// <summary>Hop at which each station received it: 0 not yet, for the origin −1.</summary>
        private readonly short[] hops = new short[stations];

        private readonly byte[] copies = new byte[stations];

        internal int Origin { get; private set; }

        internal ulong Key { get; private set; }

        internal double MadeAt { get; private set; }

        /// <summary>Relays that wait and transmissions on the air: its room is in use while there are any.</summary>
        internal int Users { get; set; }

        internal void Begin(int origin, ulong key, double now)
        {
            Array.Clear(hops);
            Array.Clear(copies);
            (Origin, Key, MadeAt, Users) = (origin, key, now, 1);
            hops[origin] = -1;
        }

        internal int HopOf(int station) => hops[station];

        internal bool IsCancelled(int station, int afterCopies) => afterCopies > 0 && station != Origin && copies[station] >= afterCopies;

        /// <summary>A station receives it; whether for the first time.</summary>
        internal bool Hear(int station, int hop)
        {
            if (hops[station] == 0)
            {
                hops[station] = (short)hop;
                return true;
            }

            copies[station] += copies[station] < byte.MaxValue ? (byte)1 : (byte)0;
            return false;
        }
    }
}
