namespace Mastwright.Tests.Workbench.Browser;

/// <summary>Tests of the pages that write a plan, with a demo of their own.</summary>
[CollectionDefinition(Name)]
public sealed class WrittenPages : ICollectionFixture<WrittenDemo>
{
    internal const string Name = "a plan that is written";
}
