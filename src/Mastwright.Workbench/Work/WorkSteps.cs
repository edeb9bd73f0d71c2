using Mastwright.Jobs;
using Mastwright.Reports.Network;

namespace Mastwright.Workbench.Work;

/// <summary>Tells work how far the jobs are that it is made of.</summary>
internal sealed class WorkSteps(WorkItem item) : IProgress<JobProgress>, IProgress<RelayProgress>
{
    public void Report(JobProgress value) => item.Report("pieces", (int)value.Done, (int)value.Total);

    public void Report(RelayProgress value) => item.Report(value.Step, value.Done, null);
}
