namespace Mastwright.Propagation.Area;
internal static class SweepFrame { internal const int MostReach = 20_000; internal const double HighestLatitude = 89; }
