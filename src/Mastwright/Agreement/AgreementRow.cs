namespace Mastwright.Agreement;

/// <summary>One direct link as it was predicted and as it was heard.</summary>
/// <param name="Station">The other station: its key in the plan.</param>
/// <param name="Name">Its name.</param>
/// <param name="PredictedDbm">Predicted signal power at the receiver, in dBm.</param>
/// <param name="SpreadDb">Standard deviation of what the prediction does not know, in dB.</param>
/// <param name="Works">Confidence, 0 to 1, that the link works.</param>
/// <param name="MeasuredDbm">Mean signal power of what was heard, in dBm; null where it was not heard directly.</param>
/// <param name="WeakOnesLost">Whether its weakest packets were lost, so that the mean is too high.</param>
public sealed record AgreementRow(string Station, string Name, double PredictedDbm, double SpreadDb, double Works, double? MeasuredDbm, bool WeakOnesLost)
{
    /// <summary>Measured less predicted, in dB; null where it was not heard directly.</summary>
    public double? OffDb => MeasuredDbm - PredictedDbm;

    /// <summary>Whether it should be heard and is not.</summary>
    public bool IsSilent => Works >= AgreementSummary.Sure && MeasuredDbm is null;

    /// <summary>Whether it should not be heard and is.</summary>
    public bool IsUnexpected => Works <= 1 - AgreementSummary.Sure && MeasuredDbm is not null;
}
