from .app import (
    PAGE as PAGE,
    make_app as make_app,
)
from .folder import Folder as Folder
from .job_requests import JobRequest as JobRequest
from .jobs import (
    Jobs as Jobs,
    JobStatus as JobStatus,
)
from .run import serve as serve
from .schema import api_schema as api_schema
from .work_responses import (
    WorkResponse as WorkResponse,
    work_response as work_response,
)
from .workers import Workers as Workers

__all__ = [
    "PAGE",
    "Folder",
    "JobRequest",
    "JobStatus",
    "Jobs",
    "WorkResponse",
    "Workers",
    "api_schema",
    "make_app",
    "serve",
    "work_response",
]
