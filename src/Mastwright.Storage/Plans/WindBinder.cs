using System.Globalization;
using Mastwright.Station.Wind;

namespace Mastwright.Storage.Plans;

/// <summary>Binds the wind of a plan, or of a site over that of the plan.</summary>
internal static class WindBinder
{
    /// <summary>The wind; null when neither mapping is there.</summary>
    /// <param name="owner">The plan or site.</param>
    /// <param name="key">Its key for the wind.</param>
    /// <param name="below">The plan's own wind, whose keys stand in; null for none.</param>
    internal static BasicWind? Bind(MappingReader owner, KeyShape key, PlanNode? below = null)
    {
        if (owner.Find(key) is not { } node || MappingReader.Open(owner.Binding, node, owner.PathOf(key), WindKeys.Shape, below) is not { } reader)
        {
            return null;
        }

        BasicWind wind = new()
        {
            SpeedMetresPerSecond = reader.Exact(WindKeys.Speed),
            Averaging = reader.Choice(WindKeys.Averaging) switch { 0 => WindAveraging.TenMinuteMean, 1 => WindAveraging.ThreeSecondGust, _ => null },
            ReturnPeriodYears = Years(reader, WindKeys.ReturnPeriod),
            Level = reader.Choice(WindKeys.Level) switch { 0 => WindLevel.Characteristic, 1 => WindLevel.Ultimate, _ => null },
            Form = reader.Choice(WindKeys.Form) switch { 0 => WindForm.Eurocode, 1 => WindForm.Asce, _ => null },
            Terrain = reader.Text(WindKeys.Terrain),
            Exposure = reader.Text(WindKeys.Exposure),
            GustFactor = reader.Number(WindKeys.GustFactor),
            UltimateFactor = reader.Number(WindKeys.UltimateFactor),
            DesignReturnPeriodYears = Years(reader, WindKeys.DesignReturnPeriod),
            OrographyFactor = reader.Number(WindKeys.Orography),
            DirectionFactor = reader.Number(WindKeys.DirectionFactor),
            SeasonFactor = reader.Number(WindKeys.SeasonFactor),
            AirDensity = reader.Number(WindKeys.AirDensity),
            TopographicFactor = reader.Number(WindKeys.TopographicFactor),
            DirectionalityFactor = reader.Number(WindKeys.Directionality),
            ElevationFactor = reader.Number(WindKeys.ElevationFactor),
            StructuralFactor = reader.Number(WindKeys.StructuralFactor),
            LoadFactor = reader.Number(WindKeys.LoadFactor),
            IceClass = reader.Text(WindKeys.Ice),
            IceDensity = reader.Number(WindKeys.IceDensity),
            IceWindShare = reader.Exact(WindKeys.IceWindShare) / 100,
        };
        reader.Done();
        return wind;
    }

    private static int? Years(MappingReader reader, KeyShape key)
    {
        if (reader.Find(key) is not { } node || ScalarBinder.Text(reader.Binding, node, reader.PathOf(key), key.Value) is not { } text)
        {
            return null;
        }

        if (text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries) is [var number, "years"]
            && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int years) && years is >= 2 and <= 10_000)
        {
            return years;
        }

        reader.Binding.Add(node, reader.PathOf(key), ScalarBinder.ValueCode, "This is not a return period.", key.Value.Wanted);
        return null;
    }
}
