using System.Security.Cryptography;
using Mastwright.Evidence;

namespace Mastwright.Tests.Evidence;

public sealed class RecordKeyTests
{
    private static readonly ReceptionRecord Heard = new()
    {
        TimeMicroseconds = 1_700_000_000_400_000,
        TimeResolutionMicroseconds = 1_000_000,
        Receiver = "ferry",
        LastSender = "tarn",
        Originator = "holm",
        FrequencyHz = 869_525_000,
        PacketId = "77",
        LevelDbm = -118,
        SnrDb = -3.5,
    };

    [Fact]
    public void A_feed_and_a_file_of_the_same_packet_have_one_key() =>
        Assert.Equal(RecordKey.Of(Heard), RecordKey.Of(Heard with
        {
            TimeMicroseconds = 1_700_000_000_000_000, TimeText = "2023-11-14T22:13:20Z", LevelDbm = null, SnrDb = null, OtherFields = "{}", HopsTaken = 2,
        }));

    public static TheoryData<ReceptionRecord> Others =>
    [
        Heard with { TimeMicroseconds = Heard.TimeMicroseconds + 1_000_000 },
        Heard with { TimeResolutionMicroseconds = 1 },
        Heard with { Receiver = "quay" },
        Heard with { LastSender = "quay" },
        Heard with { LastSender = null },
        Heard with { Originator = null },
        Heard with { LastSender = "holm", Originator = "tarn" },
        Heard with { FrequencyHz = 868_100_000 },
        Heard with { FrequencyHz = null },
        Heard with { PacketId = "78" },
        Heard with { PacketId = null },
    ];

    [Theory, MemberData(nameof(Others))]
    public void Each_field_of_the_identity_counts(ReceptionRecord other) => Assert.NotEqual(RecordKey.Of(Heard), RecordKey.Of(other));

    [Fact]
    public void Without_a_packet_number_level_ratio_and_count_tell_two_receptions_of_a_second_apart()
    {
        ReceptionRecord bare = Heard with { PacketId = null };
        RecordKey[] keys =
        [
            RecordKey.Of(bare), RecordKey.Of(bare, 1), RecordKey.Of(bare with { LevelDbm = -117 }), RecordKey.Of(bare with { SnrDb = -3.25 }),
        ];
        Assert.Equal(keys.Length, keys.Distinct().Count());
        Assert.Equal(keys[0], RecordKey.Of(bare with { LevelDbm = -118.001 }));
        Assert.Equal(RecordKey.Of(Heard), RecordKey.Of(Heard, 1));
    }

    [Fact]
    public void Two_antennas_at_one_address_are_told_apart_by_level_where_that_is_said()
    {
        ReceptionRecord other = Heard with { LevelDbm = -116 };
        Assert.Equal(RecordKey.Of(Heard), RecordKey.Of(other));
        RecordKey[] keys =
        [
            RecordKey.Of(Heard, 0, antennasShareAddress: true), RecordKey.Of(other, 0, antennasShareAddress: true),
            RecordKey.Of(Heard, 1, antennasShareAddress: true), RecordKey.Of(Heard with { PacketId = "78" }, 0, antennasShareAddress: true),
        ];
        Assert.Equal(keys.Length, keys.Distinct().Count());
    }

    [Fact]
    public void Time_is_rounded_down_before_1970_too()
    {
        Assert.Equal(-1_000_000, RecordKey.Of(Heard with { TimeMicroseconds = -1 }).StepMicroseconds);
        Assert.Equal(0, RecordKey.Of(Heard with { TimeMicroseconds = 999_999 }).StepMicroseconds);
    }

    /// <summary>The bytes are put together here by hand as the documentation of the key lists them: a stored format.</summary>
    [Fact]
    public void The_hash_is_what_the_documentation_says()
    {
        byte[] fields = [1, 1, 0, 0, 0, (byte)'a', 0, 1, 2, 0, 0, 0, 0xC3, 0xA9, 2, 1, 0, 0, 0, 0, 0, 0, 0, 1, 1, 0, 0, 0, (byte)'7'];
        byte[] hash = SHA256.HashData(fields);
        long first = 0;
        for (int at = 0; at < 8; at++)
        {
            first = (first << 8) | hash[at];
        }

        ReceptionRecord record = new() { TimeMicroseconds = 0, TimeResolutionMicroseconds = 1, Receiver = "a", Originator = "é", FrequencyHz = 1, PacketId = "7" };
        Assert.Equal(first, RecordKey.Of(record).Hash);
    }

    [Fact]
    public void Long_names_are_hashed_whole()
    {
        string name = new('x', 2000);
        Assert.NotEqual(RecordKey.Of(Heard with { Receiver = name + "a" }), RecordKey.Of(Heard with { Receiver = name + "b" }));
    }
}
