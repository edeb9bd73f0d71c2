using System.Collections.Immutable;
using System.Text;
using Mastwright.Quantities;

namespace Mastwright.Network.Links;

/// <summary>What a budget needs of a path, without the ground it was worked out over: small enough to keep for every pair.</summary>
public sealed record PathFacts
{
    /// <summary>Loss from the first to the second with its range, in dB; null when it could not be predicted.</summary>
    public Estimate? OutLossDb { get; init; }

    /// <summary>Loss from the second to the first.</summary>
    public Estimate? BackLossDb { get; init; }

    /// <summary>Part of the loss there that a location percentage other than 50 % added, in dB.</summary>
    public double OutShiftDb { get; init; }

    /// <summary>The same on the way back.</summary>
    public double BackShiftDb { get; init; }

    /// <summary>Elevation of the path at the first station, in degrees; null without a path.</summary>
    public double? FromElevationDegrees { get; init; }

    /// <summary>Elevation of the path at the second station.</summary>
    public double? ToElevationDegrees { get; init; }

    /// <summary>Standard deviation of location variability, in dB.</summary>
    public double LocationDb { get; init; }

    /// <summary>Standard deviations, in dB, of what the ends add.</summary>
    public ImmutableArray<double> EndDeviationsDb { get; init; } = [];

    /// <summary>What is missing for the path.</summary>
    public ImmutableArray<string> Missing { get; init; } = [];

    /// <summary>The facts as bytes, the same on every machine.</summary>
    public byte[] ToBytes()
    {
        using MemoryStream stream = new();
        using (BinaryWriter writer = new(stream, Encoding.UTF8))
        {
            Write(writer, OutLossDb);
            Write(writer, BackLossDb);
            writer.Write(OutShiftDb);
            writer.Write(BackShiftDb);
            writer.Write(FromElevationDegrees ?? double.NaN);
            writer.Write(ToElevationDegrees ?? double.NaN);
            writer.Write(LocationDb);
            writer.Write(EndDeviationsDb.Length);
            foreach (double deviation in EndDeviationsDb)
            {
                writer.Write(deviation);
            }

            writer.Write(Missing.Length);
            foreach (string missing in Missing)
            {
                writer.Write(missing);
            }
        }

        return stream.ToArray();
    }

    /// <summary>Reads what <see cref="ToBytes"/> wrote.</summary>
    /// <exception cref="EndOfStreamException">The bytes end too early.</exception>
    public static PathFacts FromBytes(byte[] bytes)
    {
        using BinaryReader reader = new(new MemoryStream(bytes), Encoding.UTF8);
        return new()
        {
            OutLossDb = Read(reader),
            BackLossDb = Read(reader),
            OutShiftDb = reader.ReadDouble(),
            BackShiftDb = reader.ReadDouble(),
            FromElevationDegrees = Known(reader.ReadDouble()),
            ToElevationDegrees = Known(reader.ReadDouble()),
            LocationDb = reader.ReadDouble(),
            EndDeviationsDb = [.. Enumerable.Range(0, reader.ReadInt32()).Select(_ => reader.ReadDouble())],
            Missing = [.. Enumerable.Range(0, reader.ReadInt32()).Select(_ => reader.ReadString())],
        };
    }

    private static double? Known(double value) => double.IsNaN(value) ? null : value;

    private static void Write(BinaryWriter writer, Estimate? value)
    {
        writer.Write(value?.Low ?? double.NaN);
        writer.Write(value?.Median ?? double.NaN);
        writer.Write(value?.High ?? double.NaN);
    }

    private static Estimate? Read(BinaryReader reader)
    {
        double low = reader.ReadDouble();
        double median = reader.ReadDouble();
        double high = reader.ReadDouble();
        return double.IsNaN(median) ? null : Estimate.Of(low, median, high);
    }
}
