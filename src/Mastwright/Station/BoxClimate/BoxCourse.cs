using System.Collections.Immutable;
using Mastwright.Quantities;

namespace Mastwright.Station.BoxClimate;

/// <summary>A box through its hottest and its coldest day, and through the months of a year.</summary>
/// <remarks>Row by row the balance of <see cref="BoxModel"/>; nothing is stored from hour to hour, as a box of some kilograms follows in well under one.</remarks>
public sealed record BoxCourse
{
    /// <summary>The day with the hottest hour, with all that is inside at its highest.</summary>
    public required BoxDay Hot { get; init; }

    /// <summary>The day with the coldest hour, while it works.</summary>
    public required BoxDay Cold { get; init; }

    /// <summary>Air in the box in °C as it is judged: coldest with nothing on, on the whole, hottest. What the days show stays within it, or at the least does not stand for it.</summary>
    public Estimate InsideCelsius { get; init; }

    /// <summary>The months, January first; empty where nothing is known of them.</summary>
    public ImmutableArray<BoxMonth> Months { get; init; } = [];

    /// <summary>What the days and months are taken from, as a person reads it.</summary>
    public required string Source { get; init; }

    /// <summary>A day of a box.</summary>
    /// <param name="name">What day it is.</param>
    /// <param name="model">The box.</param>
    /// <param name="hours">Its hours.</param>
    public static BoxDay Day(string name, BoxModel model, ReadOnlySpan<BoxHour> hours)
    {
        ArgumentNullException.ThrowIfNull(model);
        ImmutableArray<BoxPoint>.Builder points = ImmutableArray.CreateBuilder<BoxPoint>(hours.Length);
        foreach (BoxHour hour in hours)
        {
            (double inside, _, double roof) = model.Of(hour);
            points.Add(new(hour.OutsideCelsius, inside, roof, HumidAir.DewPointCelsius(hour.OutsideCelsius, Math.Max(0.01, hour.Humidity))));
        }

        return new(name, points.MoveToImmutable());
    }

    /// <summary>A month of a box.</summary>
    /// <param name="model">The box.</param>
    /// <param name="hours">Its hours, one or more.</param>
    /// <param name="wetHours">Hours in which dew or frost stands in it; null when not known.</param>
    public static BoxMonth Month(BoxModel model, ReadOnlySpan<BoxHour> hours, int? wetHours)
    {
        ImmutableArray<BoxPoint> points = Day("", model, hours).Points;
        return new(
            points.Min(point => point.OutsideCelsius), points.Max(point => point.OutsideCelsius),
            points.Min(point => point.InsideCelsius), points.Average(point => point.InsideCelsius), points.Max(point => point.InsideCelsius), wetHours);
    }
}

/// <summary>A day of a box.</summary>
/// <param name="Name">What day it is.</param>
/// <param name="Points">Its hours, from midnight on.</param>
public sealed record BoxDay(string Name, ImmutableArray<BoxPoint> Points);

/// <summary>A box in one hour.</summary>
/// <param name="OutsideCelsius">Air outside in °C.</param>
/// <param name="InsideCelsius">Air inside in °C.</param>
/// <param name="RoofCelsius">The coldest part of its wall in °C.</param>
/// <param name="DewPointCelsius">Dew point of the air outside in °C.</param>
public readonly record struct BoxPoint(double OutsideCelsius, double InsideCelsius, double RoofCelsius, double DewPointCelsius)
{
    /// <summary>Whether air from outside sheds dew or frost at the coldest part of the wall.</summary>
    public bool IsBelowDewPoint => RoofCelsius < DewPointCelsius;

    /// <summary>Inside and outside, in the invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{InsideCelsius:0.#} °C in {OutsideCelsius:0.#} °C");
}

/// <summary>A month of a box.</summary>
/// <param name="OutsideLowCelsius">Coldest hour outside in °C.</param>
/// <param name="OutsideHighCelsius">Hottest hour outside.</param>
/// <param name="InsideLowCelsius">Coldest hour inside.</param>
/// <param name="InsideMeanCelsius">Mean inside.</param>
/// <param name="InsideHighCelsius">Hottest hour inside.</param>
/// <param name="WetHours">Hours in which dew or frost stands in it; null when not known.</param>
public sealed record BoxMonth(
    double OutsideLowCelsius, double OutsideHighCelsius, double InsideLowCelsius, double InsideMeanCelsius, double InsideHighCelsius, int? WetHours);
