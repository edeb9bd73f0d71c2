namespace Mastwright.Storage.Tests.Jobs;

/// <summary>A clock that stands still until it is set.</summary>
internal sealed class SetClock : TimeProvider
{
    private DateTimeOffset now = new(2031, 3, 14, 12, 0, 0, TimeSpan.Zero);

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public void Pass(TimeSpan time) => now += time;

    public override DateTimeOffset GetUtcNow() => now;

    public override long GetTimestamp() => now.Ticks;
}
