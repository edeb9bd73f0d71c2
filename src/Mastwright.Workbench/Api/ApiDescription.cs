using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace Mastwright.Workbench.Api;

/// <summary>Puts the schemas of the JSON documents into the description of the API: the ones that stand beside the guide.</summary>
internal static class ApiDescription
{
    internal static void Describe(OpenApiOptions options)
    {
        options.AddDocumentTransformer((document, _, _) =>
        {
            document.Info = new()
            {
                Title = "Mastwright workbench",
                Version = "1",
                Description = "Everything that the pages show, in the versioned shapes of the command line's JSON documents. A prediction is no permission and no promise: local rules, and those licensed to work on masts and mains, come first.",
            };
            document.Servers = [new() { Url = "/" }];
            return Task.CompletedTask;
        });
        options.AddOperationTransformer((operation, context, _) =>
        {
            if (context.Description.ActionDescriptor.EndpointMetadata.OfType<ShapeOfHeader>().FirstOrDefault() is { } header)
            {
                operation.Description = $"The header's JSON schema: /api/v1/schemas/{header.Schema}.json";
            }

            ShapeOfAnswer? shape = context.Description.ActionDescriptor.EndpointMetadata.OfType<ShapeOfAnswer>().FirstOrDefault();
            if (shape is not null && operation.Responses?["200"].Content is { } content)
            {
                // By reference: a schema refers to parts of itself, so it stands in a document of its own.
                content["application/json"] = new() { Schema = new OpenApiSchema { Id = null, Title = shape.Schema, Description = $"JSON schema: /api/v1/schemas/{shape.Schema}.json" } };
                operation.Description = $"The answer's JSON schema: /api/v1/schemas/{shape.Schema}.json";
            }

            return Task.CompletedTask;
        });
    }

    /// <summary>One of the schemas that stand beside the guide; null when there is none of that name.</summary>
    internal static Stream? Schema(string name) => typeof(ApiDescription).Assembly.GetManifestResourceStream($"schemas/{name}.schema.json");
}
