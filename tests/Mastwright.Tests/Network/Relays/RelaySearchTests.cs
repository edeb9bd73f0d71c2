using CsCheck;
using Mastwright.Network.Relays;

namespace Mastwright.Tests.Network.Relays;

/// <summary>The search against all choices of small nets, tried by code of the test's own, and against cases counted by hand.</summary>
public sealed class RelaySearchTests
{
    private const double Rounding = 1e-9;

    [Fact]
    public void The_value_of_a_choice_is_what_passing_on_by_hand_gives() => MadeNet.Any.Sample(made =>
        MadeNet.Choices(made.Candidates, made.Candidates).All(chosen =>
            Math.Abs(made.Coverage.Value(chosen) - made.CoverageOf(chosen)) < Rounding
            && Math.Abs(new JoinObjective(made.Net).Value(chosen) - (made.Joined(chosen).Stations.Count - made.Joined([]).Stations.Count)) < Rounding), iter: 300);

    /// <summary>Held twice by its definition: whatever single other one is taken away, the station is still joined.</summary>
    [Fact]
    public void A_station_is_held_twice_when_it_stays_joined_whoever_else_is_lost() => MadeNet.Any.Sample(made =>
        MadeNet.Choices(made.Candidates, 3).All(chosen =>
        {
            int[] stations = [.. made.Joined(chosen).Stations.Where(station => station != 0)];
            HashSet<int> counted = made.Joined(chosen).Relays;
            bool Stays(int station, int without) => LinkedWithHome(made, counted, without).Contains(station);
            int held = stations.Count(station => Enumerable.Range(1, made.Stations - 1).Where(one => one != station).All(one => Stays(station, one))
                && counted.All(relay => Stays(station, made.Stations + relay)));
            return made.Robust.More(chosen) + made.Robust.Before == held;
        }), iter: 200);

    [Fact]
    public void More_relays_never_make_it_less() => MadeNet.Any.Sample(made => new RelayObjective[] { made.Coverage, new JoinObjective(made.Net), made.Robust }.All(objective =>
        MadeNet.Choices(made.Candidates, 2).All(chosen => Enumerable.Range(0, made.Candidates).Except(chosen)
            .All(one => objective.Value([.. chosen, one]) >= objective.Value(chosen) - Rounding))), iter: 200);

    /// <summary>1 − 1/e of the best is promised where the objective is submodular; a bound is never below the best, whatever the objective.</summary>
    [Fact]
    public void The_greedy_choice_with_exchanges_keeps_its_promise_and_its_bound() => Gen.Select(MadeNet.Any, Gen.Int[1, 3]).Sample((made, relays) =>
        new RelayObjective[] { made.Coverage, new JoinObjective(made.Net), made.Robust }.All(objective =>
        {
            double best = MadeNet.Choices(made.Candidates, relays).Max(choice => objective.Value(choice));
            RelayChoice choice = RelaySearch.Find(objective, relays, 0, TestContext.Current.CancellationToken);
            return choice.Chosen.Length <= relays
                && Math.Abs(choice.Value - objective.Value(choice.Chosen.AsSpan())) < Rounding
                && choice.Value >= choice.GreedyValue - Rounding
                && choice.UpperBound >= best - Rounding
                && choice.Bound == (objective.IsSubmodular ? RelayBound.Gains : RelayBound.Relaxation)
                && (!objective.IsSubmodular || choice.GreedyValue >= ((1 - Math.Exp(-1)) * best) - Rounding);
        }), iter: 1000);

    /// <summary>On one fixed draw of nets: how often the search without trying all choices finds the best one. Less than 97 % would be a search gone wrong.</summary>
    [Fact]
    public void The_greedy_choice_with_exchanges_is_nearly_always_the_best_of_small_nets()
    {
        int best = 0;
        int all = 0;
        Gen.Select(MadeNet.Any, Gen.Int[1, 3]).Sample((made, relays) =>
        {
            double most = MadeNet.Choices(made.Candidates, relays).Max(choice => made.Coverage.Value(choice));
            RelayChoice choice = RelaySearch.Find(made.Coverage, relays, 0, CancellationToken.None);
            Interlocked.Increment(ref all);
            Interlocked.Add(ref best, choice.Value >= most - Rounding ? 1 : 0);
        }, seed: "0N0XIzNsQ0O2", iter: 2000, threads: 1);
        Assert.InRange(best, 0.97 * all, all);
    }

    [Fact]
    public void All_choices_tried_give_the_best_one() => Gen.Select(MadeNet.Any, Gen.Int[1, 3]).Sample((made, relays) =>
    {
        RelayChoice choice = RelaySearch.Find(made.Coverage, relays, CancellationToken.None);
        double best = MadeNet.Choices(made.Candidates, relays).Max(one => made.Coverage.Value(one));
        return choice.Bound == RelayBound.Exact && Math.Abs(choice.Value - best) < Rounding && Math.Abs(choice.UpperBound - best) < Rounding;
    }, iter: 300);

    /// <summary>
    /// Greedy takes the relay of 6 first and comes to 6 + 2; the other two cover 4 + 4 + … = 9 between them. One exchange mends it: of {0, 1} the 0 goes for the 2.
    /// Items: a b c d e f (1 each) and g h i. Relay 0: a–f. Relay 1: a b c g h. Relay 2: d e f i.
    /// </summary>
    [Fact]
    public void An_exchange_mends_a_greedy_choice()
    {
        RelayNet net = new(1, 3, 0, [], [(0, 0), (1, 0), (2, 0)], [], throughRelays: false);
        CoverageObjective objective = new(net, [[0b000111111UL], [0b011000111UL], [0b100111000UL]], null, 0.5);
        RelayChoice choice = RelaySearch.Find(objective, 2, 0, CancellationToken.None);
        Assert.Equal([1, 2], choice.Chosen);
        Assert.Equal([2.5, 2], choice.Gains);
        Assert.Equal((4, 4.5, 1), (choice.GreedyValue, choice.Value, choice.Exchanges));

        // Over the greedy choice {0, 1} only the item i is left: 4 + 0.5.
        Assert.Equal(4.5, choice.UpperBound);
    }

    /// <summary>Home – 0 – 1 – far: relay 0 opens nothing, relay 1 hangs on it and joins stations 1 and 2. Without chains neither counts.</summary>
    [Theory]
    [InlineData(true, "0,1", 2)]
    [InlineData(false, "", 0)]
    public void A_relay_may_stand_for_another_alone(bool through, string chosen, double value)
    {
        RelayNet net = new(3, 2, 0, [(1, 2)], [(0, 0), (1, 1)], through ? [(0, 1)] : [], through);
        RelayChoice choice = RelaySearch.Find(new JoinObjective(net), 2, 0, CancellationToken.None);
        Assert.Equal(chosen, string.Join(',', choice.Chosen));
        Assert.Equal(value, choice.Value);
        Assert.Equal(value, choice.UpperBound);
    }

    /// <summary>A line home – 1 – 2: losing 1 cuts 2 off. A relay that home and 2 are linked with closes the ring; one that home and 1 are linked with does not.</summary>
    [Fact]
    public void A_ring_holds_twice_what_a_line_held_once()
    {
        RelayNet net = new(3, 2, 0, [(0, 1), (1, 2)], [(0, 0), (0, 1), (1, 0), (1, 2)], [], throughRelays: false);
        RobustObjective objective = new(net, [(0, 1), (1, 2)]);
        Assert.Equal(1, objective.Before);
        Assert.Equal(0, objective.More([0]));
        Assert.Equal(1, objective.More([1]));
        Assert.Equal([1], RelaySearch.Find(objective, 2, 0, CancellationToken.None).Chosen.Take(1));
    }

    /// <summary>Two candidates see blocks 0 and 1 alike, a third one block 2 alone: of two picks one is the third, though it sees the least.</summary>
    [Fact]
    public void A_screen_takes_those_that_see_most_between_them_and_not_neighbours_of_one_another()
    {
        ulong[][] inSight = [[0b011UL], [0b011UL], [0b100UL], [0UL]];
        Assert.Equal([0, 2], RelayScreen.Pick(inSight, [5, 5, 1], 2, CancellationToken.None));
        Assert.Equal([0, 1, 2], RelayScreen.Pick(inSight, [5, 5, 1], 3, CancellationToken.None));
        Assert.Equal([0, 1, 2, 3], RelayScreen.Pick(inSight, [5, 5, 1], 4, CancellationToken.None));
    }

    private static HashSet<int> LinkedWithHome(MadeNet made, HashSet<int> relays, int without)
    {
        (int One, int Other)[] links =
        [
            .. made.Between,
            .. made.Own.Where(link => relays.Contains(link.Candidate)).Select(link => (link.Candidate + made.Stations, link.Station)),
            .. made.Chain.Where(link => relays.Contains(link.One) && relays.Contains(link.Other)).Select(link => (link.One + made.Stations, link.Other + made.Stations)),
        ];
        HashSet<int> seen = [0];
        for (int before = 0; before != seen.Count;)
        {
            before = seen.Count;
            foreach ((int one, int other) in links.Where(link => link.One != without && link.Other != without))
            {
                if (seen.Contains(one) || seen.Contains(other))
                {
                    seen.Add(one);
                    seen.Add(other);
                }
            }
        }

        return seen;
    }
}
